import type { CSSProperties } from 'react';
import {
  criteriaIn,
  type DeclaredCriterion,
  type LayoutLimits,
  valueAtGuide,
} from '../../../engine/layout/criteria.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { criterionWords } from '../../../words/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table.tsx';
import type { ReadLayout } from './sheet-frame.ts';

/** Every guide under every load in figures: the twin of the strips. */
export function ReadingTable({
  layout,
  limits,
  name,
  writer,
}: {
  layout: ReadLayout;
  limits: LayoutLimits;
  name: string;
  writer: LadderWriter;
}) {
  const { fromTipM, reading } = layout;
  const judged = criteriaIn(limits);
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
              {judged.map(({ id }) => (
                <Heads key={id} title={criterionWords[id].column(unit)} writer={writer} />
              ))}
            </tr>
            <tr>
              {judged.flatMap(({ id }) =>
                writer.loads.map((load, i) => (
                  <th scope="col" key={`${id}${i}`}>
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
                {judged.flatMap((criterion) =>
                  reading.loads.map((load, i) => (
                    <td
                      key={`${criterion.id}${i}`}
                      data-label={`${criterionWords[criterion.id].short}, ${loads[i]}`}
                    >
                      <Figure text={readingAt(criterion, load, guide, writer)} />
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

function Heads({ title, writer }: { title: string; writer: LadderWriter }) {
  return (
    <th scope="colgroup" colSpan={writer.loads.length}>
      {title}
    </th>
  );
}

/** Without its unit, which stands over the column. */
function readingAt(
  criterion: DeclaredCriterion,
  load: RuledLoad,
  guide: number,
  writer: LadderWriter,
): string {
  const value = valueAtGuide(criterion, load, guide);
  if (value === undefined) return '–';
  return bare(criterionWords[criterion.id].reading(value, load.ruled[guide], writer));
}
