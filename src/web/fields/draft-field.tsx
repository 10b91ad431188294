import { type ReactNode, useId, useState } from 'react';
import type { Path } from '../../record/operation.ts';
import { FieldLine } from './field-line.tsx';
import { focusNextField } from './next-field.ts';
import { useFieldPlace } from './place.ts';

export type Typed = { ok: true; value: number | null } | { ok: false; trouble: string };

export interface DraftFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  placeholder?: string;
  /** The stored number as it is written. */
  shown: string;
  /** What was typed, as it would be stored; empty is null. */
  read(draft: string): Typed;
  /** Behind the field. */
  unit?: ReactNode;
  /** Under the field, for what stands in it. */
  echo?(text: string): string | undefined;
}

/** A typed number that is stored when the field is left or Enter is pressed, and forgotten by Escape. */
export function DraftField({ label, path, labelHidden, placeholder, ...field }: DraftFieldProps) {
  const id = useId();
  const place = useFieldPlace();
  const [draft, setDraft] = useState<string>();
  const text = draft ?? field.shown;
  const typed = draft === undefined ? undefined : field.read(draft);
  const keep = (): boolean => {
    if (!typed) return true;
    if (!typed.ok) return false;
    if (draft !== field.shown) place.write(label.toLowerCase(), [{ path, value: typed.value }]);
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
          value={text}
          placeholder={placeholder}
          aria-invalid={typed?.ok === false || undefined}
          aria-describedby={`${id}-line`}
          onChange={(event) => setDraft(event.target.value)}
          onBlur={keep}
          onKeyDown={(event) => {
            if (event.key === 'Escape') setDraft(undefined);
            if (event.key === 'Enter' && keep()) focusNextField(event.currentTarget);
          }}
        />
        {field.unit}
      </span>
      <FieldLine
        id={`${id}-line`}
        trouble={typed?.ok === false ? typed.trouble : place.trouble(path)}
        echo={field.echo?.(text)}
      />
    </div>
  );
}
