/**
 * How irregular this blank is, told by its own readings: the factors on the prior's roughness that make the readings
 * most probable, averaged over what remains possible; that of the long and middle waves first, then, where pictures
 * of one stand read the curve closely enough to tell, that of the short irregularities.
 *
 *   ln p(readings | factor) ≈ -Φ(û) - ½ ln det A        (Laplace; linearised at the present state)
 *
 * under a wide prior of the factor itself, ln factor ~ N(0, 0.6), of the short ones N(0, 1.5).
 */
import { solveLower } from '../numerics/cholesky.ts';
import { type FitProblem, factorNormalMatrix, type MostProbable } from './most-probable.ts';
import type { Roughness } from './prior.ts';
import { rowByStandard, type Unknowns } from './unknowns.ts';

/** Of the factors' own priors. */
const [waveLogSpread, shortLogSpread] = [0.6, 1.5];
const waveFactors: readonly number[] = [0.35, 0.5, 0.7, 1, 1.4, 2];
const shortFactors: readonly number[] = [0.06, 0.085, 0.12, 0.18, 0.25, 0.35, 0.5, 0.7, 1, 1.4];

/** `unknownsFor` gives the same unknowns under another roughness. */
export function probableRoughness(
  problem: FitProblem,
  best: MostProbable,
  tellsShort: boolean,
  unknownsFor: (roughness: Roughness) => Unknowns,
): Roughness {
  const evidence = (roughness: Roughness) =>
    -negativeLogEvidence(problem, best, unknownsFor(roughness)) - roughnessPenalty(roughness);
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

/** The lowest Φ of the linearised problem under other priors, and half ln det A. */
function negativeLogEvidence({ model, sigma }: FitProblem, best: MostProbable, unknowns: Unknowns): number {
  const n = unknowns.size;
  const rows = model.data.length;
  const design = best.prediction.jacobian.slice();
  const right = new Float64Array(n);
  let square = 0;
  for (let d = 0; d < rows; d++) {
    const row = design.subarray(d * n, (d + 1) * n);
    const scale = Math.sqrt(best.weight[d]) / sigma[d];
    let fromMean = best.misfit[d];
    for (let k = 0; k < n; k++) fromMean += scale * row[k] * (best.z[k] - unknowns.mean[k]);
    rowByStandard(unknowns, row);
    for (let k = 0; k < n; k++) {
      row[k] *= scale;
      right[k] += row[k] * fromMean;
    }
    square += fromMean * fromMean;
  }
  const factor = factorNormalMatrix(design, rows, n, 0);
  solveLower(factor, n, right, right);
  let explained = 0;
  for (let k = 0; k < n; k++) explained += right[k] * right[k];
  return 0.5 * (square - explained) + halfLogDeterminant(factor, unknowns);
}

/** Of A without the extra unknowns, which stand last: what doubts were freed does not count here. */
export function halfLogDeterminant(factor: Float64Array, { size, extra }: Unknowns): number {
  let sum = 0;
  for (let k = 0; k < extra.start; k++) sum += Math.log(factor[k * size + k]);
  return sum;
}
