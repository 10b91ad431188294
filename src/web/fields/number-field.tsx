import { useId, useState } from 'react';
import type { Path } from '../../record/operation.ts';
import type { DocumentKind } from '../../record/schema.ts';
import { findField } from '../../record/validate.ts';
import { FieldLine } from './field-line.tsx';
import { focusNextField } from './next-field.ts';
import { useFieldPlace } from './place.ts';
import { standardOf } from './standard.ts';

export interface NumberFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  /** Written behind the field: `%`, `×`. */
  unit?: string;
  placeholder?: string;
  /** Common practice that holds while neither build nor shop says anything. */
  common?: string;
}

/** A plain number or a count, with a decimal point or comma. */
export function NumberField({ label, path, labelHidden, unit, placeholder, common }: NumberFieldProps) {
  const id = useId();
  const place = useFieldPlace();
  const [draft, setDraft] = useState<string>();
  const stored = place.value(path);
  const standard = standardOf(place, path, common);
  const shown = typeof stored === 'number' ? String(stored) : '';
  const typed = draft === undefined ? undefined : readNumber(draft, place.kind, path);
  const keep = (): boolean => {
    if (!typed) return true;
    if (!typed.ok) return false;
    if (draft !== shown) place.write(label.toLowerCase(), [{ path, value: typed.value }]);
    setDraft(undefined);
    return true;
  };
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      <span className="field-with-unit">
        <input
          id={id}
          data-field=""
          data-path={path.join('/')}
          data-draft={draft !== undefined}
          className="field-input figures"
          type="text"
          inputMode="decimal"
          autoComplete="off"
          enterKeyHint="next"
          value={draft ?? shown}
          placeholder={standard.text ?? placeholder}
          aria-invalid={typed?.ok === false || undefined}
          aria-describedby={`${id}-line`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft(undefined);
            if (event.key === 'Enter' && keep()) focusNextField(event.currentTarget);
          }}
        />
        {unit && <span aria-hidden="true">{unit}</span>}
      </span>
      <FieldLine
        id={`${id}-line`}
        trouble={typed?.ok === false ? typed.trouble : place.trouble(path)}
        echo={(draft ?? shown) === '' ? standard.from : undefined}
      />
    </div>
  );
}

type TypedNumber = { ok: true; value: number | null } | { ok: false; trouble: string };

function readNumber(typed: string, document: DocumentKind, path: Path): TypedNumber {
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
