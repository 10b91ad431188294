/**
 * How finely the pictures of a stand were traced, told by themselves. A field of errors for all of them leaves only the
 * tracer's grain between places, a few hundredths of a millimetre in a clear picture and half of one in a poor one. Where
 * it was not stated it is taken as the places scatter about a first fit, never below what that fit's own tables resolve.
 */
import { driftDefaults } from './curve-drift.ts';
import type { Fitted } from './explanation.ts';
import { tracedGrainM } from './noise.ts';
import type { PreparedRequest } from './prepared-request.ts';
import { type Priors, refit } from './refit.ts';

/** Judgement: 81 rows of stiffness and 5 cm between places do not follow a blank closer than this. */
const leastGrainM = 0.00015;

/** With the fit that told it, where one was needed. */
export function gauged(
  request: PreparedRequest,
  priors: Priors,
): { request: PreparedRequest; fitted?: Fitted } {
  const unstated = new Set(
    request.setups.flatMap((setup, s) => (setup.kind !== 'span' && setup.curve?.grainUnstated ? [s] : [])),
  );
  if (unstated.size === 0) return { request };
  const fitted = refit({ request, named: [] }, priors, 1);
  const { problem, best } = fitted;
  const grainM = Math.max(leastGrainM, tracedGrainM(problem, best, unstated));
  if (best.hopeless || grainM >= driftDefaults.standLocalSigmaM) return { request, fitted };
  const setups = request.setups.map((setup, s) =>
    setup.kind === 'span' || !unstated.has(s)
      ? setup
      : { ...setup, tests: setup.tests.map((test) => ({ ...test, sigmaM: grainM })) },
  );
  return { request: { ...request, setups }, fitted };
}
