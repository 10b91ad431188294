import { useId } from 'react';
import type { Path } from '../../record/operation.ts';
import type { Option } from './choice-field.tsx';
import { FieldLine } from './field-line.tsx';
import { useFieldPlace } from './place.ts';

export interface PickFieldProps {
  label: string;
  path: Path;
  options: readonly Option[];
  unset: string;
  labelHidden?: boolean;
}

/** One of several, folded up: the device's own list, which every tablet shows large. */
export function PickField({ label, path, options, unset, labelHidden }: PickFieldProps) {
  const id = useId();
  const place = useFieldPlace();
  const stored = place.value(path);
  return (
    <div className="field">
      <label htmlFor={id} className={labelHidden ? 'visually-hidden' : 'field-label'}>
        {label}
      </label>
      <select
        id={id}
        className="field-input"
        data-path={path.join('/')}
        value={typeof stored === 'string' ? stored : unset}
        aria-describedby={`${id}-line`}
        onChange={(event) => place.write(label.toLowerCase(), [{ path, value: event.target.value }])}
      >
        {options.map(({ value, name }) => (
          <option key={value} value={value}>
            {name}
          </option>
        ))}
      </select>
      <FieldLine id={`${id}-line`} trouble={place.trouble(path)} folds />
    </div>
  );
}
