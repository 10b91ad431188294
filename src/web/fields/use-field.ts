import { type ReactNode, useId } from 'react';
import type { Change, Objection, Path } from '../../record/operation.ts';
import type { Field, FieldValue } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { fieldDeed } from '../../words/deeds.ts';
import {
  hintText,
  labelOf,
  originText,
  paleText,
  type Reader,
  rangeText,
  storedText,
} from '../../words/field-text.ts';
import { useShop } from '../read/shop.tsx';
import { quantityOf } from '../read/values.ts';
import type { Option } from './few-choices.tsx';
import { type FieldPlace, useFieldPlace } from './place.ts';

/** What a screen may say of a field beside its path; everything else is declared in src/record/fields. */
export interface FieldProps {
  path: Path;
  /** Of a row in a table; its own name where left out. */
  label?: string;
  /** In a table the column's heading is the visible label; it is still read aloud. */
  labelHidden?: boolean;
  /** What holds while it is empty, where that depends on this rod: SI, a number, the word of a choice. */
  usual?: number | string;
  /** Shown pale in place of what is declared. */
  pale?: string;
  options?: readonly Option[];
  unit?: string;
  hint?: ReactNode;
  /** Where what is kept comes from, such as the rack. */
  origin?: string;
  disabled?: boolean;
  /** Enter in the field before passes it over: it is seldom changed. */
  passedOver?: boolean;
  /** One line of text that folds where it is longer than its field, so that nothing of it is hidden. */
  folds?: boolean;
  /** Measured the other way than it is kept: its sign is turned on the screen, so that no minus is typed. */
  turned?: boolean;
  /** Written together with the value: the row it stands in, or what follows from the value. */
  also?: readonly Change[] | ((value: FieldValue) => readonly Change[]);
}

interface UsedField {
  id: string;
  field: Field;
  label: string;
  hint: ReactNode;
  reader: Reader;
  /** The build's own value; null where it says nothing. */
  own: FieldValue;
  standard: Standard;
  /** What the checks say of what is kept. */
  trouble: string | undefined;
  write(value: FieldValue): Objection[];
}

export function useField(props: FieldProps): UsedField {
  const { path, label, labelHidden, usual, pale, unit, hint, also = [] } = props;
  const id = useId();
  const place = useFieldPlace();
  const { reader } = useShop();
  const sign = props.turned ? turnSign : (value: FieldValue) => value;
  const declared = declaredAt(place.kind, path);
  const field = unit === undefined ? declared : ({ ...declared, unit, holds: undefined } as Field);
  const standing = usual === undefined ? field : { origin: { by: 'trade' as const }, ...field, usual };
  const standard = standardOf(place, path, standing, reader);
  return {
    id,
    field,
    label: label ?? labelOf(field),
    hint: hint ?? (labelHidden ? undefined : hintText(field, reader.writer)),
    reader,
    own: sign(place.value(path)),
    standard: pale === undefined ? standard : { ...standard, text: pale },
    trouble: place.trouble(path),
    write: (value) => {
      const further = typeof also === 'function' ? also(sign(value)) : also;
      return place.write(fieldDeed(path), [{ path, value: sign(value) }, ...further]);
    },
  };
}

function turnSign(value: FieldValue): FieldValue {
  const quantity = quantityOf(value);
  if (!quantity || quantity.si === 0) return value;
  const { si, text } = quantity;
  return { si: -si, text: /^[-−]/.test(text) ? text.slice(1).trimStart() : `-${text}` };
}

function declaredAt(kind: Parameters<typeof findField>[0], path: Path): Field {
  const field = findField(kind, path);
  if (typeof field === 'string') throw new Error(field);
  return field;
}

/** What holds while a field is empty, and where that comes from. */
interface Standard {
  value: FieldValue;
  text: string | undefined;
  from: string | undefined;
}

/** The shop's habit before common practice, with the trade's range beside either. */
function standardOf(place: FieldPlace, path: Path, field: Field, reader: Reader): Standard {
  const value = place.habit?.(path) ?? null;
  if (value === null) {
    const usual = field.usual ?? null;
    return { value: usual, text: paleText(field, reader), from: originText(field, reader) };
  }
  const range = rangeText(field, reader);
  const from = range ? `your shop’s; typical ${range}` : 'your shop’s';
  return { value, text: storedText(field, value, reader), from };
}
