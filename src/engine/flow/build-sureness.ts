/** The band on the stiffness carried through to one build's scores and marks. */
import type { BlankTables } from '../bench/free-rod.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { type ScaleOf, sameScale } from '../stiffness/draw-states.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import { samplePosterior } from '../stiffness/posterior.ts';
import { type MarkSpread, type SpreadQuestion, spreadOfMarks } from '../sureness/mark-spread.ts';
import { readSureness, type Sureness, type SurenessQuestion } from '../sureness/sureness.ts';
import type { LayoutQuestion } from './layout-question.ts';

export interface BuildSureness {
  scores: Sureness;
  marks: MarkSpread;
}
interface SurenessOptions {
  /** Blanks that fixed marks are read on, and on which the guides are placed anew. */
  readOn: number;
  placeOn: number;
  seed: number;
}
export const surenessDefaults: SurenessOptions = { readOn: 100, placeOn: 16, seed: 20 };

/**
 * Only for a build whose stiffness was fitted: what the diameters alone say has no band to carry. `spread`: of the
 * marks, where it is known already.
 */
export function buildSureness(
  { request, startFromTipM, ownFromTipM }: LayoutQuestion,
  proposedFromTipM: readonly number[],
  posterior: Posterior,
  options: SurenessOptions = surenessDefaults,
  spread?: MarkSpread,
): BuildSureness {
  const marks = (fromTipM: readonly number[]) => ({ ladder: request, fromTipM });
  const question: SurenessQuestion = {
    start: startFromTipM.length === request.guides.count ? marks(startFromTipM) : undefined,
    own: ownFromTipM && marks(ownFromTipM),
    proposed: marks(proposedFromTipM),
  };
  return {
    scores: readSureness(question, blanksThatFit(posterior, options.readOn, options.seed)),
    marks: spread ?? markSureness({ request, proposedFromTipM }, posterior, options),
  };
}

/** Blanks as likely as each other after the readings; the same seed gives the same ones, fewer are the first of them. */
export function blanksThatFit(
  posterior: Posterior,
  count: number = surenessDefaults.readOn,
  seed: number = surenessDefaults.seed,
  scaleOf?: ScaleOf,
): BlankTables[] {
  return samplePosterior({ posterior }, count, seed, scaleOf).map(
    ({ stiffness, massPerLength = [], restCurvature }) => ({ stiffness, massPerLength, restCurvature }),
  );
}

/** How far the best place of every guide moves, on a few blanks of one scale. */
export function markSureness(
  question: SpreadQuestion,
  posterior: Posterior,
  { placeOn, seed }: SurenessOptions = surenessDefaults,
  progress?: (soFar: MarkSpread) => void,
): MarkSpread {
  return spreadOfMarks(question, blanksThatFit(posterior, placeOn, seed, sameScale), progress);
}

/**
 * ± of each guide's best place as it is shown beside its mark; undefined for the first, the stripping and pinned
 * guides, whose marks are given and not found, and for all where the guides could not be placed anew.
 */
export function plusMinusOfMarks(
  { pinned = [] }: Pick<LayoutRequest, 'pinned'>,
  { blanks, plusMinusM }: MarkSpread,
): (number | undefined)[] {
  const given = new Set([0, plusMinusM.length - 1, ...pinned.map(({ index }) => index)]);
  return plusMinusM.map((m, guide) => (blanks < 2 || given.has(guide) ? undefined : m));
}
