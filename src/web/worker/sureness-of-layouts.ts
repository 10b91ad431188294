import type { BlankTables } from '../../engine/bench/free-rod.ts';
import { blanksThatFit, markSureness } from '../../engine/flow/build-sureness.ts';
import { type Power, predictPower } from '../../engine/flow/power.ts';
import type { Posterior } from '../../engine/stiffness/posterior.ts';
import type { FitRequest } from '../../engine/stiffness/request.ts';
import type { MarkSpread } from '../../engine/sureness/mark-spread.ts';
import { readSureness, type Sureness } from '../../engine/sureness/sureness.ts';
import type { BlanksTask, PowerTask, SpreadTask, SurenessTask } from './doubt-messages.ts';
import { keptFit } from './kept-fit.ts';

/** The blanks that whatever is said to be sure is read on. */
export function blanksOfBench({ fit }: BlanksTask): BlankTables[] {
  return blanksThatFit(posteriorFor(fit));
}

/** Layouts read on blanks that fit the bench's readings. Throws where the readings make no sense. */
export function surenessOfLayouts(
  { fit, question }: SurenessTask,
  progress: (soFar: Sureness) => void,
): Sureness {
  return readSureness(question, blanksThatFit(posteriorFor(fit)), progress);
}

/** The guides placed anew on the first of those blanks; the last answer is kept for the next step that asks. */
export function spreadOfPlaces(task: SpreadTask, progress: (soFar: MarkSpread) => void): MarkSpread {
  const text = JSON.stringify(task);
  if (keptSpread?.text !== text) {
    const { fit, request, proposedFromTipM } = task;
    const spread = markSureness({ request, proposedFromTipM }, posteriorFor(fit), undefined, progress);
    keptSpread = { text, spread };
  }
  return keptSpread.spread;
}
let keptSpread: { text: string; spread: MarkSpread } | undefined;

/** Bare and finished, with what the readings leave open where there are readings. */
export function powerOfBlank({ fit, tables, question }: PowerTask): Power {
  return predictPower(question, tables, fit ? blanksThatFit(posteriorFor(fit)) : []);
}

/** What the readings leave open. */
function posteriorFor(request: FitRequest): Posterior {
  const { posterior } = keptFit(request);
  if (!posterior) throw new Error('the readings of the bench cannot be fitted');
  return posterior;
}
