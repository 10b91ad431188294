import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** The drawing in figures. */
export function BlankTable({ blank }: { blank: AssembledBlank }) {
  const { system } = useShop();
  const show = (lengthM: number) => <Figure text={formatLength(lengthM, { system, decimals: 1 })} />;
  return (
    <details className="figures-twin">
      <summary>The drawing in figures</summary>
      <Table
        label="Sections in figures"
        className="stacked"
        spoken="Sections of the blank put together, distances from the tip"
        heads={['Section', 'Length', 'From tip', 'to', 'Seen from', 'to']}
      >
        {blank.sections.map(({ id, name, lengthM, ends, visible }, index) => (
          <tr key={id}>
            <th scope="row">
              {index + 1} {name}
            </th>
            <td data-label="Length">{show(lengthM)}</td>
            <td data-label="From tip">{show(ends.fromTipM)}</td>
            <td data-label="to">{show(ends.toTipM)}</td>
            <td data-label="Seen from">{show(visible.fromTipM)}</td>
            <td data-label="to">{show(visible.toTipM)}</td>
          </tr>
        ))}
      </Table>
    </details>
  );
}
