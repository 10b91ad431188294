import { type NextReading, nextReading } from '../../engine/sureness/next-reading.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { siWriter } from '../../words/writer.ts';
import type { NextReadingTask } from './doubt-messages.ts';
import { keptFit } from './kept-fit.ts';
import { helpingMarks } from './proposed-layout.ts';

/** Places the guides on the fitted blank, then asks which reading narrows them most. Throws where they have no place. */
export function nextReadingOfBench(
  { fit, request, standing, clampHeightM }: NextReadingTask,
  progress: (share: number) => void,
): NextReading {
  const { answer, posterior } = keptFit(fit);
  if (answer.status === 'refused' || !posterior)
    throw new Error('the readings of the bench cannot be fitted');
  const helping = helpingMarks({ request, fit });
  if (!('layout' in helping)) {
    const [why] = helping.findings;
    throw new Error(why ? sentenceOf(why, siWriter) : 'the guides have no place');
  }
  const { layout, insteadFromTipM } = helping;
  const { fromTipM: proposedFromTipM, slackM } = layout;
  const question = { fit, standing, clampHeightM, tables: answer, posterior };
  return nextReading({ ...question, request, proposedFromTipM, slackM, insteadFromTipM }, progress);
}
