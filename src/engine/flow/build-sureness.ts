/** The band on the stiffness carried through to one build's scores and marks. */
import type { BlankTables } from '../bench/free-rod.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import { samplePosterior } from '../stiffness/posterior.ts';
import { type MarkSpread, spreadOfMarks } from '../sureness/mark-spread.ts';
import { readSureness, type Sureness, type SurenessQuestion } from '../sureness/sureness.ts';
import type { LayoutQuestion } from './layout-question.ts';

export interface BuildSureness {
  scores: Sureness;
  marks: MarkSpread;
}
export interface SurenessOptions {
  /** Blanks that fixed marks are read on, and on which the guides are placed anew. */
  readOn: number;
  placeOn: number;
  seed: number;
}
export const surenessDefaults: SurenessOptions = { readOn: 100, placeOn: 10, seed: 20 };

/** Only for a build whose stiffness was fitted: what the diameters alone say has no band to carry. */
export function buildSureness(
  { request, startFromTipM, ownFromTipM }: LayoutQuestion,
  proposedFromTipM: readonly number[],
  posterior: Posterior,
  { readOn, placeOn, seed }: SurenessOptions = surenessDefaults,
): BuildSureness {
  const blanks = samplePosterior({ posterior }, readOn, seed).map(
    ({ stiffness, massPerLength = [], restCurvature }): BlankTables => ({
      stiffness,
      massPerLength,
      restCurvature,
    }),
  );
  const marks = (fromTipM: readonly number[]) => ({ ladder: request, fromTipM });
  const question: SurenessQuestion = {
    start: startFromTipM.length === request.guides.count ? marks(startFromTipM) : undefined,
    own: ownFromTipM && marks(ownFromTipM),
    proposed: marks(proposedFromTipM),
  };
  return {
    scores: readSureness(question, blanks),
    marks: spreadOfMarks({ request, proposedFromTipM }, blanks.slice(0, placeOn)),
  };
}
