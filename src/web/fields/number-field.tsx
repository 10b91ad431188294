import type { Path } from '../../record/operation.ts';
import type { DocumentKind } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { DraftField, type Typed } from './draft-field.tsx';
import { useFieldPlace } from './place.ts';
import { standardOf } from './standard.ts';

export interface NumberFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  /** Written behind the field: `%`, `×`. */
  unit?: string;
  placeholder?: string;
}

/** A plain number or a count, with a decimal point or comma. */
export function NumberField({ label, path, labelHidden, unit, placeholder }: NumberFieldProps) {
  const place = useFieldPlace();
  const stored = place.value(path);
  const standard = standardOf(place, path);
  return (
    <DraftField
      label={label}
      path={path}
      labelHidden={labelHidden}
      placeholder={standard.text ?? placeholder}
      shown={typeof stored === 'number' ? String(stored) : ''}
      read={(draft) => readNumber(draft, place.kind, path)}
      unit={unit && <span aria-hidden="true">{unit}</span>}
      echo={(text) => (text === '' ? standard.from : undefined)}
    />
  );
}

function readNumber(typed: string, document: DocumentKind, path: Path): Typed {
  const kind = findField(document, path);
  if (typeof kind === 'string' || kind.kind !== 'number') throw new Error(`${path.join('/')} is no number`);
  const text = typed.trim().replace(',', '.');
  if (text === '') return { ok: true, value: null };
  const value = Number(text);
  const fits = Number.isFinite(value) && value >= kind.min && value <= kind.max;
  if (fits && (!kind.integer || Number.isInteger(value))) return { ok: true, value };
  const what = kind.integer ? 'a whole number' : 'a number';
  return {
    ok: false,
    trouble: `"${typed}" is not ${what} from ${kind.min} to ${kind.max}. Write it like ${kind.min}.`,
  };
}
