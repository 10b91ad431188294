import { Button } from 'react-aria-components';
import type { SortedBag } from '../../../engine/guides/bag-sorting.ts';
import { rackSheet } from '../../../sheets/rack-sheet.ts';
import { guidesToCome } from '../../../words/guides-to-come.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useShop } from '../../read/shop.tsx';

/** Which guide of the bag goes where; what to order, what to send back. */
export function RackPart({ sorted, numberOf }: { sorted: SortedBag; numberOf(bagId: string): number }) {
  const { paper, writer } = useShop();
  const { print, printing } = usePrint();
  const draw = (stamp: string) => [rackSheet(sorted, numberOf, { paper, stamp, writer })];
  return (
    <Part
      title="The rack"
      aside="straightest at the tip; the tolerance grows with the blank"
      tools={
        <Button
          className="button"
          isDisabled={printing}
          onPress={() => print({ sheet: 'rack', paper, draw })}
        >
          Rack sheet as PDF
        </Button>
      }
    >
      <div role="status">
        {sorted.order.length > 0 && (
          <p className="attention">▲ Too few usable guides. Order {guidesToCome(sorted.order)}.</p>
        )}
      </div>
      <TableFrame label="Rack">
        <table className="figures-table stacked">
          <thead>
            <tr>
              <th scope="col">Place from the tip</th>
              <th scope="col">Size</th>
              <th scope="col">Blank there</th>
              <th scope="col">Number in the bag</th>
            </tr>
          </thead>
          <tbody>
            {sorted.places.map(({ guide, size, outsideM, bagId }) => (
              <tr key={guide}>
                <th scope="row">{guide}</th>
                <td data-label="Size">{size}</td>
                <td data-label="Blank there">{writer.calliper(outsideM)}</td>
                <td data-label="Number in the bag">
                  {bagId === undefined ? <span className="quiet">order one</span> : numberOf(bagId)}
                </td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      {sorted.rejects.length > 0 && (
        <>
          <h3>Goes back</h3>
          <ul>
            {sorted.rejects.map(({ guide, reason }) => (
              <li key={guide.id}>
                {numberOf(guide.id)} ({guide.size}): {sentenceOf(reason, writer)}
              </li>
            ))}
          </ul>
        </>
      )}
      {sorted.spare.length > 0 && (
        <p className="quiet">Spare: {sorted.spare.map(({ id }) => numberOf(id)).join(', ')}.</p>
      )}
    </Part>
  );
}
