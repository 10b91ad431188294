import { useMemo } from 'react';
import { Link } from 'wouter';
import { withPlusMinus } from '../../../engine/marks/marks-list.ts';
import { systemOfTape } from '../../../engine/units/tape-step.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { Field } from '../../fields/field.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSentence } from '../../read/use-sentence.ts';
import { MarksTables } from './marks-tables.tsx';
import { RoundingPart } from './rounding-part.tsx';
import { StripsPart } from './strips-part.tsx';
import { useMarks } from './use-marks.ts';
import './marks.css';

/** From the layout to pencil ticks on every section, and to strips at true size. */
export function MarksStep() {
  const sentence = useSentence();
  const { id, rows } = useBuild();
  const { blank } = useBench();
  const marks = useMarks();
  const printed = useMemo(() => rows('prints').length > 0, [rows]);
  if (!marks) {
    const before = blank ? { step: 'layout', name: 'Layout' } : { step: 'blank', name: 'Blank' };
    return (
      <NextLine>
        {blank
          ? 'No layout is chosen yet; choose one under '
          : 'The sections of the blank are not complete; see '}
        <Link href={`/builds/${id}/${before.step}`}>{before.name}</Link>. The marks then stand here.
      </NextLine>
    );
  }
  const { list, zones, model, doubt } = marks;
  return (
    <BuildFields>
      <NextLine goOn={{ href: `/builds/${id}/guides`, name: 'Guides' }}>
        {list.findings.length > 0
          ? sentence(list.findings[0])
          : printed
            ? 'Measure the rules on the print; then lay each strip along its section, tip end on tip end, and tick.'
            : 'Print the strips at actual size, or mark from the list with a tape.'}
      </NextLine>
      <SinceNote works={['marks']} />
      <StripsPart blank={marks.blank} list={doubt.stale ? withPlusMinus(list, []) : list} zones={zones} />
      <Part
        title="Marks"
        aside={`in ${systemOfTape(list.tapeStep) === 'mm' ? 'millimetres' : 'inches'}, from each section’s own ends to the middle of each ring; the tip’s begins at the datum`}
      >
        <Field path={['layout', '-', 'tapeStep']} usual={list.tapeStep} />
        <RoundingPart list={list} model={model} />
        <MarksTables sections={list.sections} step={list.tapeStep} />
        <p className={doubt.stale ? 'attention' : 'quiet'} role="status">
          {doubt.words}
        </p>
      </Part>
    </BuildFields>
  );
}
