import { blanksThatFit } from '../../engine/flow/build-sureness.ts';
import type { LayoutAnswer, LayoutProgress } from '../../engine/layout/layout.ts';
import { marksThatHelp } from '../../engine/sureness/marks-that-help.ts';
import { keptFit } from './kept-fit.ts';
import type { LayoutTask } from './messages.ts';

/** The marks that help on most blanks that fit the readings; the start where none do, or nothing was read. */
export function proposedLayout(
  { request, fit }: Pick<LayoutTask, 'request' | 'fit'>,
  progress?: (soFar: LayoutProgress) => void,
): LayoutAnswer {
  const posterior = fit && keptFit(fit).posterior;
  const helping = marksThatHelp(request, posterior ? blanksThatFit(posterior) : [], progress);
  return 'layout' in helping ? helping.layout : helping;
}
