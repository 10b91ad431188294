import type { CSSProperties } from 'react';
import { criteria, type DeclaredCriterion, metrics, valueAtGuide } from '../../../engine/layout/criteria.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import type { Wording } from '../../../words/bench.ts';
import { criterionWords } from '../../../words/criteria.ts';
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
              {criteria.map(({ id }) => (
                <Heads key={id} title={criterionWords[id].column(unit)} wording={wording} />
              ))}
            </tr>
            <tr>
              {metrics.flatMap((metric) =>
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
                {criteria.flatMap((criterion) =>
                  reading.loads.map((load, i) => (
                    <td
                      key={`${criterion.id}${i}`}
                      data-label={`${criterionWords[criterion.id].short}, ${loads[i]}`}
                    >
                      <Figure text={readingAt(criterion, load, guide, wording)} />
                    </td>
                  )),
                )}
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

/** Without its unit, which stands over the column. */
function readingAt(criterion: DeclaredCriterion, load: RuledLoad, guide: number, { gap }: Wording): string {
  const value = valueAtGuide(criterion, load, guide);
  if (value === undefined) return '–';
  return criterionWords[criterion.id].reading(value, load.ruled[guide], gap).replace(/ (in|mm)$/, '');
}
