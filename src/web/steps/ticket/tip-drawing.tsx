import type { RodShape, ShortenedRod } from '../../../engine/repair/shortened-rod.ts';
import { formatGrams, formatLength } from '../../../engine/units/format-quantity.ts';
import { Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';
import { useWidth } from '../../read/use-width.ts';

/** The rod before and after its tip was lost, held level under the same weight, to one scale. */
export function TipDrawing({ rods, measured }: { rods: ShortenedRod; measured: boolean }) {
  const { ref, widthPx: roomPx } = useWidth();
  const widthPx = Math.min(roomPx, mostPx);
  const { before, after, loadKg } = rods;
  const dropM = Math.max(before.tipDropM, after.tipDropM, 0.01);
  const reachM = Math.max(...before.points.map(({ xM }) => xM));
  const pxPerM = (widthPx - 16) / reachM;
  const heightPx = Math.max(60, dropM * pxPerM + 30);
  const path = (shape: RodShape) =>
    `M${shape.points.map(({ xM, yM }) => `${(8 + xM * pxPerM).toFixed(1)} ${(14 - yM * pxPerM).toFixed(1)}`).join('L')}`;
  return (
    <>
      <figure ref={ref} className="drawing">
        {widthPx > 0 && (
          <svg
            width={widthPx}
            height={heightPx}
            role="img"
            aria-label={`Both rods under ${formatGrams(loadKg, 0)}; their figures stand in the table below`}
          >
            <path d={`M8 14H${widthPx - 8}`} className="tip-level" />
            <path d={path(before)} className="tip-before" />
            <path d={path(after)} className="tip-after" />
          </svg>
        )}
        <figcaption className="quiet small">
          Held level, {formatGrams(loadKg, 0)} on the tip; dashed as it was, full as it will be.{' '}
          {measured
            ? 'From the readings of this blank.'
            : 'Nothing was read on this blank: a guess from its diameters.'}
        </figcaption>
      </figure>
      <BeforeAfter rods={rods} />
    </>
  );
}

/** Wider, a deep bend would push the figures off the screen. */
const mostPx = 620;

function BeforeAfter({ rods: { before, after } }: { rods: ShortenedRod }) {
  const { system } = useShop();
  const length = (lengthM: number) => formatLength(lengthM, { system, denominator: 8, decimals: 0 });
  const rows: [
    name: string,
    of: (shape: RodShape) => number | undefined,
    write: (value: number) => string,
  ][] = [
    ['Free length, tip to grip', ({ lengthM }) => lengthM, length],
    ['Tip hangs', ({ tipDropM }) => tipDropM, length],
    [
      'Weight for a drop of a third, held at the grip',
      ({ thirdLoadKg }) => thirdLoadKg,
      (kg) => formatGrams(kg, 0),
    ],
    ['Swings, bare and held at the grip', ({ hz }) => hz, (hz) => `${(hz * 60).toFixed(0)} a minute`],
  ];
  return (
    <Table
      label="Before and after"
      className="ticket-before-after"
      heads={['The rod', 'Before', 'After', 'Change']}
      rows={rows.map(([name, of, write]) => {
        const [a, b] = [of(before), of(after)];
        return [
          name,
          a === undefined ? '–' : write(a),
          b === undefined ? '–' : write(b),
          a === undefined || b === undefined ? '–' : percent(b / a - 1),
        ];
      })}
    />
  );
}

function percent(share: number): string {
  return `${share < 0 ? '−' : '+'}${Math.abs(share * 100).toFixed(0)} %`;
}
