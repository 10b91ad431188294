import type { AssembledBlank } from '../../../engine/bench/assemble.ts';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useShop } from '../../read/shop.tsx';

/** The drawing in figures. */
export function BlankTable({ blank }: { blank: AssembledBlank }) {
  const { system } = useShop();
  const show = (lengthM: number) => <Figure text={formatLength(lengthM, { system, decimals: 1 })} />;
  return (
    <details className="figures-twin">
      <summary>The drawing in figures</summary>
      <TableFrame label="Sections in figures">
        <table className="figures-table stacked">
          <caption className="visually-hidden">
            Sections of the blank put together, distances from the tip
          </caption>
          <thead>
            <tr>
              <th scope="col">Section</th>
              <th scope="col">Length</th>
              <th scope="col">From tip</th>
              <th scope="col">to</th>
              <th scope="col">Seen from</th>
              <th scope="col">to</th>
            </tr>
          </thead>
          <tbody>
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
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}
