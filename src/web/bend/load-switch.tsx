import { Label, Radio, RadioGroup } from 'react-aria-components';

/** Which load of the ladder is drawn strongly. */
export function LoadSwitch({
  names,
  drawn,
  onChange,
}: {
  names: readonly string[];
  drawn: number;
  onChange(load: number): void;
}) {
  return (
    <RadioGroup className="choice" value={String(drawn)} onChange={(value) => onChange(Number(value))}>
      <Label className="field-label">Load drawn</Label>
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
