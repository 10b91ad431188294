import type { RotationRequest } from '../../../engine/rotation/request.ts';
import { unrolled } from '../../../engine/rotation/unrolled.ts';
import { degrees } from '../../../words/turning.ts';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';

/** The drawing in figures: what was read at each step beside the fitted curve there. */
export function TurnsTable({ request, name }: { request: RotationRequest; name: string }) {
  const curves = unrolled(request, Math.PI / 180);
  if (!curves) return null;
  const mm = (lengthM: number) => (1000 * lengthM).toFixed(2);
  return (
    <details className="figures-twin">
      <summary>The drawing in figures</summary>
      <TableFrame label={`Turns of ${name} in figures`}>
        <table className="figures-table">
          <caption className="visually-hidden">Bow and stiffness of {name} by angle, mm</caption>
          <thead>
            <tr>
              <th scope="col">facing down</th>
              <th scope="col">bow, mm</th>
              <th scope="col">curve ±</th>
              <th scope="col">second less first load, mm</th>
              <th scope="col">curve ±</th>
            </tr>
          </thead>
          <tbody>
            {curves.points.map(({ turnRad, bowM, differenceM, odd }, index) => {
              const at = Math.round((turnRad * 180) / Math.PI);
              const place = ((at % 360) + 360) % 360;
              const [bow, difference] = [curves.bow[place], curves.difference[place]];
              return (
                <tr key={index}>
                  <th scope="row">
                    {degrees(turnRad)}
                    {odd && <span className="small"> left out</span>}
                  </th>
                  <td>{mm(bowM)}</td>
                  <td>
                    {mm(bow.valueM)} ±{mm(bow.plusMinusM)}
                  </td>
                  <td>{mm(differenceM)}</td>
                  <td>
                    {mm(difference.valueM)} ±{mm(difference.plusMinusM)}
                  </td>
                </tr>
              );
            })}
          </tbody>
        </table>
      </TableFrame>
    </details>
  );
}
