import { type KeyboardEvent, useId, useState } from 'react';
import type { Path } from '../../record/operation.ts';
import { FieldLine } from './field-line.tsx';
import { focusNextField } from './next-field.ts';
import { useFieldPlace } from './place.ts';
import { standardOf } from './standard.ts';

export interface TextFieldProps {
  label: string;
  path: Path;
  labelHidden?: boolean;
  /** Several lines; Enter then begins a new one. */
  lines?: number;
  /** One line that folds where it is longer than its field, so that nothing of it is hidden. */
  folds?: boolean;
  placeholder?: string;
  gesture?: string;
}

/** A name or a note; kept on Enter or on leaving the field. */
export function TextField(props: TextFieldProps) {
  const { label, path, labelHidden, lines, folds, placeholder, gesture } = props;
  const id = useId();
  const place = useFieldPlace();
  const [draft, setDraft] = useState<string>();
  const [refusal, setRefusal] = useState<string>();
  const stored = place.value(path);
  const shown = typeof stored === 'string' ? stored : '';
  const keep = (): boolean => {
    if (draft === undefined || draft === shown) {
      setDraft(undefined);
      return true;
    }
    const value = draft.trim() === '' ? null : draft.trim();
    const findings = place.write(gesture ?? label.toLowerCase(), [{ path, value }]);
    setRefusal(findings[0]?.message);
    if (findings.length === 0) setDraft(undefined);
    return findings.length === 0;
  };
  const common = {
    id,
    className: 'field-input',
    'data-path': path.join('/'),
    'data-draft': draft !== undefined,
    value: draft ?? shown,
    placeholder: standardOf(place, path).text ?? placeholder,
    'aria-invalid': refusal !== undefined || undefined,
    'aria-describedby': `${id}-line`,
    onChange: (event: { target: { value: string } }) => setDraft(event.target.value),
    onBlur: keep,
  };
  const oneLine = {
    ...common,
    'data-field': '',
    autoComplete: 'off',
    onKeyDown: (event: KeyboardEvent<HTMLInputElement | HTMLTextAreaElement>) => {
      if (event.key === 'Escape') setDraft(undefined);
      if (event.key !== 'Enter') return;
      event.preventDefault();
      if (keep()) focusNextField(event.currentTarget);
    },
  };
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      {lines && <textarea {...common} rows={lines} />}
      {!lines && folds && (
        <textarea {...oneLine} className="field-input field-folds" rows={1} enterKeyHint="next" />
      )}
      {!lines && !folds && <input {...oneLine} type="text" />}
      <FieldLine id={`${id}-line`} trouble={refusal ?? place.trouble(path)} folds />
    </div>
  );
}
