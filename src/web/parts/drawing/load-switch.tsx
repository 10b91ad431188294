import { Label, Radio, RadioGroup } from 'react-aria-components';

/** One load of the ladder. */
export function LoadSwitch({
  label,
  names,
  drawn,
  onChange,
}: {
  label: string;
  names: readonly string[];
  drawn: number;
  onChange(load: number): void;
}) {
  return (
    <RadioGroup className="choice" value={String(drawn)} onChange={(value) => onChange(Number(value))}>
      <Label className="field-label">{label}</Label>
      <div className="choice-options">
        {names.map((name, load) => (
          <Radio key={load} value={String(load)} className="choice-option">
            {name}
          </Radio>
        ))}
      </div>
    </RadioGroup>
  );
}
