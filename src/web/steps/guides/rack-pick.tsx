import type { Row } from '../../../record/document.ts';
import { rackName } from '../../../record/rack.ts';

interface RackPickProps {
  label: string;
  /** Rows that may stand here. */
  rack: readonly Row[];
  chosen: string | undefined;
  onChoose(row: Row): void;
}

/** Which of the shop's guides stands at one place. */
export function RackPick({ label, rack, chosen, onChoose }: RackPickProps) {
  const known = rack.some(({ id }) => id === chosen);
  return (
    <select
      className="field-input"
      aria-label={label}
      value={known ? chosen : ''}
      onChange={({ target }) => {
        const row = rack.find(({ id }) => id === target.value);
        if (row) onChoose(row);
      }}
    >
      <option value="" disabled>
        {rack.length === 0 ? 'none yet' : 'choose'}
      </option>
      {rack.map((row) => (
        <option key={row.id} value={row.id}>
          {rackName(row)}
        </option>
      ))}
    </select>
  );
}
