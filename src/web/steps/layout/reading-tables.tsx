import type { CSSProperties } from 'react';
import { formatDegrees } from '../../../engine/units/format-quantity.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { shareInWords } from '../../../words/worst.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/drawing/table-frame.tsx';
import type { ReadLayout } from './sheet-frame.ts';

/** Every guide under every load in figures: the twin of the strips. */
export function ReadingTable({
  layout,
  name,
  writer,
}: {
  layout: ReadLayout;
  name: string;
  writer: LadderWriter;
}) {
  const { fromTipM, reading } = layout;
  const loads = writer.loads.map((load) => load.replace(' ', '\u00a0'));
  const unit = writer.units === 'inch' ? 'in' : 'mm';
  return (
    <details className="readings-twin">
      <summary>Every reading of {name}</summary>
      <TableFrame label={`Every reading of ${name}`}>
        <table className="figures-table stacked" style={{ '--loads': writer.loads.length } as CSSProperties}>
          <thead>
            <tr>
              <th scope="col" rowSpan={2}>
                guide
              </th>
              <th scope="col" rowSpan={2}>
                from tip, {unit}
              </th>
              <Heads title="line angle" writer={writer} />
              <Heads title={`gap by rule, ${unit}`} writer={writer} />
              <Heads title="extra bend" writer={writer} />
            </tr>
            <tr>
              {[0, 1, 2].flatMap((metric) =>
                writer.loads.map((load, i) => (
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
                  <Figure text={bare(writer.length(at))} />
                </td>
                {reading.loads.map((load, i) => (
                  <td key={`angle${i}`} data-label={`angle, ${loads[i]}`}>
                    {guide + 1 < fromTipM.length ? formatDegrees(load.rings[guide + 1].lineAngleRad) : '–'}
                  </td>
                ))}
                {reading.loads.map((load, i) => (
                  <td key={`gap${i}`} data-label={`gap, ${loads[i]}`}>
                    <Figure text={bare(writer.fine(load.ruled[guide].ruleGapM))} />
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

function Heads({ title, writer }: { title: string; writer: LadderWriter }) {
  return (
    <th scope="colgroup" colSpan={writer.loads.length}>
      {title}
    </th>
  );
}
