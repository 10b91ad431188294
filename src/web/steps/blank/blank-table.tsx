import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** The drawing in figures. */
export function BlankTable({ blank }: { blank: AssembledBlank }) {
  const { system } = useShop();
  const show = (lengthM: number) => formatLength(lengthM, { system, decimals: 1 });
  return (
    <details className="figures-twin">
      <summary>The drawing in figures</summary>
      <Table
        label="Sections in figures"
        className="stacked"
        spoken="Sections of the blank put together, distances from the tip"
        heads={['Section', 'Length', 'From tip', 'to', 'Seen from', 'to']}
        rows={blank.sections.map(({ name, lengthM, ends, visible }, index) => [
          `${index + 1} ${name}`,
          show(lengthM),
          show(ends.fromTipM),
          show(ends.toTipM),
          show(visible.fromTipM),
          show(visible.toTipM),
        ])}
      />
    </details>
  );
}
