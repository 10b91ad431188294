import {
  type BuildSureness,
  buildSureness,
  markSureness,
  plusMinusOfMarks,
} from '../engine/flow/build-sureness.ts';
import { type MarksList, withPlusMinus } from '../engine/sheets/marks-list.ts';
import type { MarkSpread } from '../engine/sureness/mark-spread.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Undefined where nothing was hung on the blank: a guess has no band to carry. */
export function sureness({ work }: WorkedBuild): BuildSureness | undefined {
  if (!work.posterior) return undefined;
  process.stderr.write('Reading the layouts on many blanks that fit the readings …\n');
  return buildSureness(work.question, work.best.fromTipM, work.posterior);
}

/** The marks with the ± of every guide's best place, as the screen's Marks list has them. */
export function marksWithSureness(
  { work }: WorkedBuild,
  spread: MarkSpread | undefined = spreadOfWork(work),
): MarksList {
  return spread ? withPlusMinus(work.marks, plusMinusOfMarks(work.question.request, spread)) : work.marks;
}

function spreadOfWork({ posterior, question, best }: WorkedBuild['work']): MarkSpread | undefined {
  if (!posterior) return undefined;
  process.stderr.write('Placing the guides anew on blanks that fit the readings …\n');
  return markSureness({ request: question.request, proposedFromTipM: best.fromTipM }, posterior);
}
