import { marksToMake } from '../../engine/flow/marks-to-make.ts';
import type { LayoutAnswer, LayoutProgress } from '../../engine/layout/layout.ts';
import type { MarksAnswer } from '../../engine/sureness/marks-that-help.ts';
import { keptFit } from './kept-fit.ts';
import type { LayoutTask } from './messages.ts';

/** The marks that help on most blanks that fit the readings; the start where none do, or nothing was read. */
export function proposedLayout(
  task: Pick<LayoutTask, 'request' | 'fit'>,
  progress?: (soFar: LayoutProgress) => void,
): LayoutAnswer {
  const helping = helpingMarks(task, progress);
  return 'layout' in helping ? helping.layout : helping;
}

export function helpingMarks(
  { request, fit }: Pick<LayoutTask, 'request' | 'fit'>,
  progress?: (soFar: LayoutProgress) => void,
): MarksAnswer {
  const posterior = fit && keptFit(fit).posterior;
  return marksToMake(request, fit && posterior && { fit, posterior }, progress);
}
