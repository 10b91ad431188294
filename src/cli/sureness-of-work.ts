import {
  type BuildSureness,
  buildSureness,
  markSureness,
  plusMinusOfMarks,
} from '../engine/flow/build-sureness.ts';
import { standingSetup } from '../engine/flow/next-reading-question.ts';
import { type MarksList, withPlusMinus } from '../engine/marks/marks-list.ts';
import { benchFit } from '../engine/stiffness/from-bench.ts';
import type { MarkSpread } from '../engine/sureness/mark-spread.ts';
import { type NextReading, nextReading } from '../engine/sureness/next-reading.ts';
import type { WorkedBuild } from './work-build-file.ts';

/** Undefined where nothing was hung on the blank: a guess has no band to carry. */
export function sureness({ work, bench }: WorkedBuild): WorkSureness | undefined {
  const { posterior, question, best, insteadFromTipM, tables } = work;
  if (!posterior) return undefined;
  process.stderr.write('Reading the layouts on many blanks that fit the readings …\n');
  const next = nextReading({
    fit: benchFit(bench).request,
    ...standingSetup(bench),
    tables,
    posterior,
    request: question.request,
    proposedFromTipM: best.fromTipM,
    slackM: best.slackM,
    insteadFromTipM,
  });
  const { blanks, tried, plusMinusM, costOfKeeping, expectedCost } = next;
  const spread = { blanks, tried, plusMinusM, costOfKeeping, expectedCost };
  return { ...buildSureness(question, best.fromTipM, posterior, undefined, spread), next };
}

export interface WorkSureness extends BuildSureness {
  /** The readings that would narrow the marks most. */
  next: NextReading;
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
