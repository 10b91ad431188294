import type { MarkRow, SectionMarks } from '../../../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../../../engine/units/tape-step.ts';
import { slackInWords, tapeWriter } from '../../../words/places.ts';
import { linesToDraw, markRoundInWords } from '../../../words/round.ts';
import { Figure } from '../../fields/figure.tsx';
import { SectionCaption } from '../../parts/sheet/section-caption.tsx';
import { Table } from '../../parts/sheet/table.tsx';

export interface MarksTablesProps {
  sections: readonly SectionMarks[];
  step: TapeStep;
}

/** The marks, a table per section, so that every section can be marked alone. */
export function MarksTables({ sections, step }: MarksTablesProps) {
  const round = sections.some(({ rows }) => rows.some((row) => row.round !== undefined));
  return (
    <>
      {round && <p>{linesToDraw}</p>}
      <div className="marks-tables">
        {sections.map((section, index) => (
          <SectionTable key={section.id} section={section} index={index} step={step} round={round} />
        ))}
      </div>
    </>
  );
}

interface SectionTableProps extends Omit<MarksTablesProps, 'sections'> {
  section: SectionMarks;
  index: number;
  /** Whether guides stand on more than one line. */
  round: boolean;
}

function SectionTable({ section, index, step, round }: SectionTableProps) {
  return (
    <Table
      label={`Marks of ${section.name}`}
      className="marks-table stacked"
      caption={<SectionCaption section={section} index={index} step={step} />}
      heads={[
        'Guide',
        'From its tip end',
        'From its butt end',
        ...(round ? ['Round, from the top'] : []),
        'May move: − to tip, + to butt',
      ]}
    >
      {section.rows.map((row) => (
        <MarkTableRow key={row.guide} row={row} step={step} round={round} />
      ))}
      {section.rows.length === 0 && (
        <tr>
          <td colSpan={round ? 5 : 4} className="quiet">
            no guide on this section
          </td>
        </tr>
      )}
    </Table>
  );
}

function MarkTableRow({ row, step, round }: { row: MarkRow; step: TapeStep; round: boolean }) {
  const { fromOwnTipM, fromOwnButtM, slack } = row;
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
      {round && (
        <td data-label="Round, from the top">
          {row.round && <Figure text={markRoundInWords(row.round, step)} />}
        </td>
      )}
      <td data-label="May move: − tip, + butt" className="quiet marks-move">
        {slack && <Figure text={slackInWords(slack.towardsTipM, slack.towardsButtM, tapeWriter(step))} />}
      </td>
    </tr>
  );
}

/** Without its unit, which the caption has. */
function OnTape({ lengthM, step }: { lengthM: number; step: TapeStep }) {
  return <Figure text={formatOnTape(lengthM, step).replace(/ (in|mm)$/, '')} />;
}
