import type { ScannedGuide } from '../../../image/index.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

interface ScanTableProps {
  guides: readonly ScannedGuide[];
  sizes: readonly string[];
  sizeOf(index: number): string;
  /** An empty size leaves the guide out. */
  choose(index: number, size: string): void;
}

/** What the scan says of each guide, and which size it is. */
export function ScanTable({ guides, sizes, sizeOf, choose }: ScanTableProps) {
  const { writer } = useShop();
  return (
    <Table
      label="Guides on the scan"
      className="stacked"
      heads={['On the scan', 'Length', 'Feet apart, sideways', 'Angle between them', 'Size', 'How well seen']}
    >
      {guides.map(({ centrePx, lengthM, offsetM, angleRad, quality }, index) => (
        <tr key={centrePx.join(' ')}>
          <th scope="row">{index + 1}</th>
          <td data-label="Length">{writer.calliper(lengthM)}</td>
          <td data-label="Feet apart, sideways">{writer.calliper(Math.abs(offsetM))}</td>
          <td data-label="Angle between them">{((Math.abs(angleRad) * 180) / Math.PI).toFixed(1)}°</td>
          <td data-label="Size">
            <select
              className="field-input"
              aria-label={`Size of guide ${index + 1} on the scan`}
              value={sizeOf(index)}
              onChange={({ target }) => choose(index, target.value)}
            >
              {sizes.map((size) => (
                <option key={size} value={size}>
                  {size}
                </option>
              ))}
              <option value="">leave it out</option>
            </select>
          </td>
          <td data-label="How well seen" className={quality < 0.5 ? 'attention' : 'quiet'}>
            {quality < 0.5 ? '▲ look at it yourself' : 'well'}
          </td>
        </tr>
      ))}
    </Table>
  );
}
