import type { MarkRow, SectionMarks } from '../../../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../../../engine/units/tape-step.ts';
import { plusMinusInWords, slackInWords } from '../../../words/places.ts';
import { roundedWords } from '../../../words/rounded.ts';
import { Figure } from '../../fields/figure.tsx';
import { SectionCaption } from '../../parts/sheet/section-caption.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import { useShop } from '../../read/shop.tsx';

export interface MarksTablesProps {
  sections: readonly SectionMarks[];
  step: TapeStep;
  /** The ± are of an earlier state of the build. */
  stale: boolean;
}

/** The marks, a table per section, so that every section can be marked alone. */
export function MarksTables({ sections, step, stale }: MarksTablesProps) {
  return (
    <div className="marks-tables">
      {sections.map((section, index) => (
        <SectionTable key={section.id} section={section} index={index} step={step} stale={stale} />
      ))}
    </div>
  );
}

interface SectionTableProps extends Omit<MarksTablesProps, 'sections'> {
  section: SectionMarks;
  index: number;
}

function SectionTable({ section, index, step, stale }: SectionTableProps) {
  return (
    <TableFrame label={`Marks of ${section.name}`}>
      <table className="figures-table marks-table stacked">
        <SectionCaption section={section} index={index} step={step} />
        <thead>
          <tr>
            <th scope="col">Guide</th>
            <th scope="col">From its tip end</th>
            <th scope="col">From its butt end</th>
            <th scope="col">Station, rounded by</th>
            <th scope="col">Interval</th>
            <th scope="col">May move; best place ±</th>
          </tr>
        </thead>
        <tbody>
          {section.rows.map((row) => (
            <MarkTableRow key={row.guide} row={row} step={step} stale={stale} />
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

function MarkTableRow({ row, step, stale }: { row: MarkRow; step: TapeStep; stale: boolean }) {
  const { writer } = useShop();
  const { fromOwnTipM, fromOwnButtM, fromTipM, intervalM, slack, plusMinusM } = row;
  const rounded = fromTipM - row.exactFromTipM;
  const roundedBy = roundedWords(rounded, step);
  return (
    <tr>
      <th scope="row">
        <span className="mark-main">{row.guide}</span> <span className="quiet small">{row.name}</span>
      </th>
      <td className="mark-main" data-label="From tip end">
        <OnTape lengthM={fromOwnTipM} step={step} />
      </td>
      <td className="mark-main" data-label="From butt end">
        <OnTape lengthM={fromOwnButtM} step={step} />
      </td>
      <td data-label="Station">
        <OnTape lengthM={fromTipM} step={step} />
        {roundedBy && (
          <span className="quiet small">
            {' '}
            {/* Plus is towards the butt. */}
            <Figure text={`${rounded > 0 ? '+' : '−'}${roundedBy}`} />
          </span>
        )}
      </td>
      <td data-label="Interval">
        <OnTape lengthM={intervalM} step={step} />
      </td>
      <td data-label="May move; best place ±" className="quiet marks-move">
        {slack && <Figure text={slackInWords(slack.towardsTipM, slack.towardsButtM, writer)} />}
        <span className={stale ? 'small stale' : 'small'}>
          <Figure text={plusMinusInWords(plusMinusM, writer)} />
        </span>
      </td>
    </tr>
  );
}

/** Without its unit, which the caption has. */
function OnTape({ lengthM, step }: { lengthM: number; step: TapeStep }) {
  return <Figure text={formatOnTape(lengthM, step).replace(/ (in|mm)$/, '')} />;
}
