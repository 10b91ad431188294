import { fitStiffness } from '../../engine/stiffness/fit.ts';
import { type Posterior, samplePosterior } from '../../engine/stiffness/posterior.ts';
import { readSureness, type Sureness } from '../../engine/sureness/sureness.ts';
import type { SurenessTask } from './messages.ts';

/** Blanks read on; the same ones every time. */
const blanksRead = { count: 100, seed: 20 };

/** Layouts read on blanks that fit the bench's readings. Throws where the readings make no sense. */
export function surenessOfLayouts(
  { fit, question }: SurenessTask,
  progress: (soFar: Sureness) => void,
): Sureness {
  const posterior = posteriorFor(fit);
  const blanks = samplePosterior({ posterior }, blanksRead.count, blanksRead.seed).map(
    ({ stiffness, massPerLength = [], restCurvature }) => ({ stiffness, massPerLength, restCurvature }),
  );
  return readSureness(question, blanks, progress);
}

/** Marks change more often than readings: the last fit is kept. */
let kept: { text: string; posterior: Posterior } | undefined;

function posteriorFor(request: SurenessTask['fit']): Posterior {
  const text = JSON.stringify(request);
  if (kept?.text === text) return kept.posterior;
  const { posterior } = fitStiffness(request);
  if (!posterior) throw new Error('the readings of the bench cannot be fitted');
  kept = { text, posterior };
  return posterior;
}
