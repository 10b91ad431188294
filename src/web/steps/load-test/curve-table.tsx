import type { CurvePoint } from '../../../record/load-curve.ts';
import type { ShowLength } from '../../parts/photo/photo-request.ts';
import { Table } from '../../parts/sheet/table.tsx';

const rowsShown = 21;

/** The curve in figures: every twentieth of its way from the tip. */
export function CurveTable({ points, show }: { points: readonly CurvePoint[]; show: ShowLength }) {
  const rows = curveRows(points);
  return (
    <details className="photo-fold">
      <summary>The curve in figures</summary>
      <Table
        label="The curve in figures"
        caption={
          <>
            Curve, tip to butt <span className="quiet">places in the marks’ plane</span>
          </>
        }
        heads={['From tip', 'To the right', 'Up', 'Standard error']}
        rows={rows.map(({ fromTipM, xM, yM, sigmaM }) => [
          show(fromTipM),
          show(xM),
          show(yM),
          `${(sigmaM * 1000).toFixed(1)} mm`,
        ])}
      />
    </details>
  );
}

function curveRows(points: readonly CurvePoint[]) {
  let alongM = 0;
  const fromTip = points.toReversed().map((point, i, all) => {
    if (i > 0) alongM += Math.hypot(point.xM - all[i - 1].xM, point.yM - all[i - 1].yM);
    return { fromTipM: alongM, ...point };
  });
  const kept = Math.min(rowsShown, fromTip.length);
  return Array.from({ length: kept }, (_, i) => fromTip[Math.round((i * (fromTip.length - 1)) / (kept - 1))]);
}
