import type { SectionMarks } from '../../../engine/marks/marks-list.ts';
import { formatOnTape, type TapeStep } from '../../../engine/units/tape-step.ts';
import { lineSideInWords } from '../../../words/line-side.ts';
import { lineSideRoundInWords } from '../../../words/round.ts';
import { Figure } from '../../fields/figure.tsx';

/** A section's number, name and length at the head of its table. */
export function SectionCaption({
  section,
  index,
  step,
}: {
  section: { name: string; lengthM: number } & Pick<SectionMarks, 'lineSide' | 'lineSideRoundM'>;
  index: number;
  step: TapeStep;
}) {
  return (
    <>
      <span className="section-number">{index + 1}</span> {section.name},{' '}
      <span className="quiet">
        <Figure text={formatOnTape(section.lengthM, step)} /> long
      </span>
      {section.lineSide && (
        <span className="caption-side aside">
          line side {lineSideInWords(section.lineSide)}
          <Figure text={lineSideRoundInWords(section, step)} />
        </span>
      )}
    </>
  );
}
