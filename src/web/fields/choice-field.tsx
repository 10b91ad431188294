import { useId } from 'react';
import { Label, Radio, RadioGroup } from 'react-aria-components';
import type { Path } from '../../record/operation.ts';
import { FieldLine } from './field-line.tsx';
import { useFieldPlace } from './place.ts';
import { standardOf } from './standard.ts';

export interface Option {
  value: string;
  name: string;
}
export interface ChoiceFieldProps {
  label: string;
  path: Path;
  options: readonly Option[];
  /** What holds while nothing is chosen. */
  unset: string;
  labelHidden?: boolean;
}

/** One of a few, all to be seen. */
export function ChoiceField({ label, path, options, unset, labelHidden }: ChoiceFieldProps) {
  const id = useId();
  const place = useFieldPlace();
  const own = place.value(path);
  const standard = standardOf(place, path);
  const stored = own ?? standard.value;
  return (
    <RadioGroup
      className="field choice"
      aria-describedby={`${id}-line`}
      value={typeof stored === 'string' ? stored : unset}
      onChange={(value) => place.write(label.toLowerCase(), [{ path, value }])}
    >
      <Label className={labelHidden ? 'visually-hidden' : 'field-label'}>{label}</Label>
      <div className="choice-options">
        {options.map(({ value, name }) => (
          <Radio key={value} value={value} className="choice-option">
            {name}
          </Radio>
        ))}
      </div>
      {own === null && standard.from && <FieldLine id={`${id}-line`} echo={standard.from} />}
    </RadioGroup>
  );
}
