import type { CurvePoint } from '../../../record/load-curve.ts';
import { Figure } from '../../fields/figure.tsx';
import type { ShowLength } from '../../parts/photo/photo-request.ts';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';

const rowsShown = 21;

/** The curve in figures: every twentieth of its way from the tip. */
export function CurveTable({ points, show }: { points: readonly CurvePoint[]; show: ShowLength }) {
  const rows = curveRows(points);
  return (
    <details className="photo-fold">
      <summary>The curve in figures</summary>
      <TableFrame label="The curve in figures">
        <table className="figures-table">
          <caption>
            Curve, tip to butt <span className="quiet">places in the marks’ plane</span>
          </caption>
          <thead>
            <tr>
              <th scope="col">From tip</th>
              <th scope="col">To the right</th>
              <th scope="col">Up</th>
              <th scope="col">Standard error</th>
            </tr>
          </thead>
          <tbody>
            {rows.map(({ fromTipM, xM, yM, sigmaM }) => (
              <tr key={fromTipM}>
                <th scope="row">
                  <Figure text={show(fromTipM)} />
                </th>
                <td>
                  <Figure text={show(xM)} />
                </td>
                <td>
                  <Figure text={show(yM)} />
                </td>
                <td>{(sigmaM * 1000).toFixed(1)} mm</td>
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
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
