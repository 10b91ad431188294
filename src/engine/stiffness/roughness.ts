/**
 * How irregular this blank is, told by its own readings: the factors on the prior's roughness that make the readings
 * most probable, averaged over what remains possible; that of the long and middle waves first, then, where pictures
 * of one stand read the curve closely enough to tell, that of the short irregularities.
 *
 *   ln p(readings | factor) ≈ -Φ(û) - ½ ln det A        (Laplace; linearised at the present state)
 *
 * under a wide prior of the factor itself, ln factor ~ N(0, 0.6), of the short ones N(0, 1.5).
 */
import type { FitProblem, MostProbable } from './most-probable.ts';
import type { Roughness } from './prior.ts';
import { stiffnessEvidence } from './roughness-evidence.ts';
import type { GaussianPrior, Unknowns } from './unknowns.ts';

/** Of the factors' own priors. */
const [waveLogSpread, shortLogSpread] = [0.6, 1.5];
const waveFactors: readonly number[] = [0.35, 0.5, 0.7, 1, 1.4, 2];
const shortFactors: readonly number[] = [0.06, 0.085, 0.12, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4];

/** `stiffnessUnder` gives the stiffness's own prior under another roughness. */
export function probableRoughness(
  problem: FitProblem,
  best: MostProbable,
  tellsShort: boolean,
  stiffnessUnder: (roughness: Roughness) => GaussianPrior,
): Roughness {
  const evidenceOf = stiffnessEvidence(problem, best);
  const evidence = (roughness: Roughness) =>
    evidenceOf(stiffnessUnder(roughness)) - roughnessPenalty(roughness);
  const waves = probableFactor(waveFactors, (factor) => evidence({ waves: factor, short: 1 }));
  if (!tellsShort) return { waves, short: 1 };
  return { waves, short: probableFactor(shortFactors, (short) => evidence({ waves, short })) };
}

function probableFactor(factors: readonly number[], logOf: (factor: number) => number): number {
  const logs = factors.map(logOf);
  const most = Math.max(...logs);
  let total = 0;
  let sum = 0;
  logs.forEach((log, i) => {
    const p = Math.exp(log - most);
    total += p;
    sum += p * Math.log(factors[i]);
  });
  return Math.exp(sum / total);
}

/** -ln of the factors' own prior. */
export function roughnessPenalty({ waves, short }: Roughness): number {
  return 0.5 * ((Math.log(waves) / waveLogSpread) ** 2 + (Math.log(short) / shortLogSpread) ** 2);
}

/** Of A without the extra unknowns, which stand last: what doubts were freed does not count here. */
export function halfLogDeterminant(factor: Float64Array, { size, extra }: Unknowns): number {
  let sum = 0;
  for (let k = 0; k < extra.start; k++) sum += Math.log(factor[k * size + k]);
  return sum;
}
