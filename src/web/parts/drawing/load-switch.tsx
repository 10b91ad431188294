import { FewChoices } from '../../fields/few-choices.tsx';

interface LoadSwitchProps {
  label: string;
  names: readonly string[];
  drawn: number;
  onChange(load: number): void;
}

/** One load of the ladder. */
export function LoadSwitch({ label, names, drawn, onChange }: LoadSwitchProps) {
  return (
    <FewChoices
      className="choice"
      label={label}
      options={names.map((name, load) => ({ value: `${load}`, name }))}
      value={`${drawn}`}
      choose={(load) => onChange(Number(load))}
    />
  );
}
