import type { JudgedReading, JudgedRing, RodJudgement } from '../../../engine/load-test/rod-judgement.ts';
import { formatDegrees, formatLength } from '../../../engine/units/format-quantity.ts';
import { Figure } from '../../fields/figure.tsx';
import { type Cell, marked, Table } from '../../parts/sheet/table.tsx';
import { useShop } from '../../read/shop.tsx';

/** Seen beside predicted and updated, guide by guide. */
export function JudgeTable({ judged, hung }: { judged: RodJudgement; hung: string }) {
  const { system } = useShop();
  const length = (m: number, decimals = 0) => formatLength(m, { system, denominator: 16, decimals });
  const gap = (m: number) => length(m, 1);
  const predicted = judged.rings.some(({ lineAngle }) => lineAngle?.predicted !== undefined);
  const counted = judged.rings.find(({ lineAngle }) => lineAngle?.limit !== undefined);
  const angleLimit = counted?.lineAngle?.limit;
  const gapLimit = judged.rings[0].gap?.limit;
  return (
    <>
      <p className="small quiet">
        {angleLimit !== undefined && `Limit of the line angle ${formatDegrees(angleLimit)}. `}
        {gapLimit !== undefined && <Figure text={`Limit of the gap above the ring ${gap(gapLimit)}.`} />}
      </p>
      <Table
        label="Seen and predicted at every guide"
        caption={<>Under {hung}</>}
        heads={[
          'Guide',
          'From tip',
          'Line angle seen',
          ...(predicted ? ['predicted'] : []),
          'with both',
          'Gap seen, to the next',
          ...(predicted ? ['predicted'] : []),
          'with both',
        ]}
        rows={judged.rings.map((ring, i) => [
          i === 0 ? 'tip-top' : i,
          `${placeText(ring, length)}${ring.tapped || i === 0 ? '' : ' mark'}`,
          ...readingCells(ring.lineAngle, formatDegrees, predicted),
          ...readingCells(ring.gap, gap, predicted),
        ])}
      />
    </>
  );
}

function placeText({ tapped, fromTipM, markFromTipM }: JudgedRing, length: (m: number) => string): string {
  return tapped && fromTipM.plusMinus > 0
    ? `${length(fromTipM.value)} ± ${length(fromTipM.plusMinus)}`
    : length(markFromTipM);
}

/** Beyond the limit only where the ± cannot explain it. */
function readingCells(
  reading: JudgedReading | undefined,
  text: (value: number) => string,
  predicted: boolean,
): Cell[] {
  if (!reading) return predicted ? ['–', '–', '–'] : ['–', '–'];
  const { seen, limit, updated } = reading;
  const beyond = limit !== undefined && seen.value - seen.plusMinus > limit;
  return [
    marked(beyond, `${text(seen.value)} ± ${text(seen.plusMinus)}`),
    ...(predicted ? [reading.predicted === undefined ? '–' : text(reading.predicted)] : []),
    { of: text(updated), className: limit !== undefined && updated > limit ? 'attention' : '' },
  ];
}
