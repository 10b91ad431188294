import type { CSSProperties } from 'react';
import { formatDegrees } from '../../../engine/units/format-quantity.ts';
import { shareInWords, type Wording } from '../../../words/bench.ts';
import { shortLength } from '../../../words/wording.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/drawing/table-frame.tsx';
import type { ReadLayout } from './sheet-frame.ts';

/** Every guide under every load in figures: the twin of the strips. */
export function ReadingTable({
  layout,
  name,
  wording,
}: {
  layout: ReadLayout;
  name: string;
  wording: Wording;
}) {
  const { fromTipM, reading } = layout;
  const loads = wording.loads.map((load) => load.replace(' ', '\u00a0'));
  const unit = wording.system === 'inch' ? 'in' : 'mm';
  return (
    <details className="readings-twin">
      <summary>Every reading of {name}</summary>
      <TableFrame label={`Every reading of ${name}`}>
        <table className="figures-table stacked" style={{ '--loads': wording.loads.length } as CSSProperties}>
          <thead>
            <tr>
              <th scope="col" rowSpan={2}>
                guide
              </th>
              <th scope="col" rowSpan={2}>
                from tip, {unit}
              </th>
              <Heads title="line angle" wording={wording} />
              <Heads title={`gap by rule, ${unit}`} wording={wording} />
              <Heads title="extra bend" wording={wording} />
            </tr>
            <tr>
              {[0, 1, 2].flatMap((metric) =>
                wording.loads.map((load, i) => (
                  <th scope="col" key={`${metric}${i}`}>
                    {load}
                  </th>
                )),
              )}
            </tr>
          </thead>
          <tbody>
            {fromTipM.map((at, guide) => (
              <tr key={at}>
                <th scope="row">{guide + 1}</th>
                <td data-label={`from tip, ${unit}`}>
                  <Figure text={shortLength(at, wording.system)} />
                </td>
                {reading.loads.map((load, i) => (
                  <td key={`angle${i}`} data-label={`angle, ${loads[i]}`}>
                    {guide + 1 < fromTipM.length ? formatDegrees(load.rings[guide + 1].lineAngleRad) : '–'}
                  </td>
                ))}
                {reading.loads.map((load, i) => (
                  <td key={`gap${i}`} data-label={`gap, ${loads[i]}`}>
                    <Figure text={wording.gap(load.ruled[guide].ruleGapM).replace(/ (in|mm)$/, '')} />
                  </td>
                ))}
                {reading.loads.map((load, i) => (
                  <td key={`bend${i}`} data-label={`extra, ${loads[i]}`}>
                    {shareInWords(load.spans[guide].extraBendPerM, load.ruled[guide].ownBendPerM)}
                  </td>
                ))}
              </tr>
            ))}
          </tbody>
        </table>
      </TableFrame>
      <p className="small quiet">
        Interval, gap and extra bend of a row belong to the span from the ring before it, towards the tip.
      </p>
    </details>
  );
}

function Heads({ title, wording }: { title: string; wording: Wording }) {
  return (
    <th scope="colgroup" colSpan={wording.loads.length}>
      {title}
    </th>
  );
}
