import type { MarkRow, SectionMarks } from '../../engine/sheets/marks-list.ts';
import { formatMm } from '../../engine/units/format-quantity.ts';
import { formatOnTape, type TapeStep } from '../../engine/units/tape-step.ts';
import { Figure } from '../fields/figure.tsx';
import { TableFrame } from '../shell/table-frame.tsx';

/** The marks, a table per section, so that every section can be marked alone. */
export function MarksTables({ sections, step }: { sections: readonly SectionMarks[]; step: TapeStep }) {
  return (
    <div className="marks-tables">
      {sections.map((section, index) => (
        <SectionTable key={section.id} section={section} index={index} step={step} />
      ))}
    </div>
  );
}

function SectionTable({ section, index, step }: { section: SectionMarks; index: number; step: TapeStep }) {
  const on = (lengthM: number) => <Figure text={formatOnTape(lengthM, step)} />;
  return (
    <TableFrame label={`Marks of ${section.name}`}>
      <table className="figures-table marks-table">
        <caption>
          <span className="section-number">{index + 1}</span> {section.name},{' '}
          <span className="quiet">{on(section.lengthM)} long</span>
        </caption>
        <thead>
          <tr>
            <th scope="col">Guide</th>
            <th scope="col">From its tip end</th>
            <th scope="col">From its butt end</th>
            <th scope="col">Station</th>
            <th scope="col">Interval</th>
            <th scope="col">Rounded by</th>
          </tr>
        </thead>
        <tbody>
          {section.rows.map((row) => (
            <MarkTableRow key={row.guide} row={row} on={on} />
          ))}
          {section.rows.length === 0 && (
            <tr>
              <td colSpan={6} className="quiet">
                no guide on this section
              </td>
            </tr>
          )}
        </tbody>
      </table>
    </TableFrame>
  );
}

function MarkTableRow({ row, on }: { row: MarkRow; on(lengthM: number): React.ReactNode }) {
  const rounded = row.fromTipM - row.exactFromTipM;
  return (
    <tr>
      <th scope="row">
        {row.guide} <span className="quiet">{row.name}</span>
      </th>
      <td className="mark-main">{on(row.fromOwnTipM)}</td>
      <td className="mark-main">{on(row.fromOwnButtM)}</td>
      <td>{on(row.fromTipM)}</td>
      <td>{on(row.intervalM)}</td>
      <td className="quiet">{Math.abs(rounded) < 5e-5 ? '–' : signedMm(rounded)}</td>
    </tr>
  );
}

/** `+0.4 mm`: towards the butt. */
function signedMm(lengthM: number): string {
  return `${lengthM > 0 ? '+' : '−'}${formatMm(Math.abs(lengthM))}`;
}
