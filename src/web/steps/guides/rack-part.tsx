import type { SortedBag } from '../../../engine/guides/bag-sorting.ts';
import { rackSheet } from '../../../sheets/rack-sheet.ts';
import { guidesToCome } from '../../../words/guides-to-come.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** Which guide of the bag goes where; what to order, what to send back. */
export function RackPart({ sorted, numberOf }: { sorted: SortedBag; numberOf(bagId: string): number }) {
  const { writer } = useShop();
  return (
    <Part
      title="The rack"
      aside="straightest at the tip; the tolerance grows with the blank"
      tools={
        <PrintButton sheet="rack" draw={(on) => [rackSheet(sorted, numberOf, { ...on, writer })]}>
          Rack sheet as PDF
        </PrintButton>
      }
    >
      <div role="status">
        {sorted.order.length > 0 && (
          <p className="attention">▲ Too few usable guides. Order {guidesToCome(sorted.order)}.</p>
        )}
      </div>
      <Table
        label="Rack"
        className="stacked"
        heads={['Place from the tip', 'Size', 'Blank there', 'Number in the bag']}
        rows={sorted.places.map(({ guide, size, outsideM, bagId }) => [
          guide,
          size,
          writer.calliper(outsideM),
          { of: bagId === undefined ? <span className="quiet">order one</span> : numberOf(bagId) },
        ])}
      />
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
