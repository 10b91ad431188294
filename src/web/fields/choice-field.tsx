import { Label, Radio, RadioGroup } from 'react-aria-components';
import type { Path } from '../../record/operation.ts';
import { useFieldPlace } from './place.ts';

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
  const place = useFieldPlace();
  const stored = place.value(path) ?? place.habit?.(path);
  return (
    <RadioGroup
      className="field choice"
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
    </RadioGroup>
  );
}
