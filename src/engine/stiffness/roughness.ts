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
import { partByStandard, type Unknowns } from './unknowns.ts';

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
  const lines = linearised(problem, best);
  const evidence = (roughness: Roughness) =>
    -negativeLogEvidence(lines, unknownsFor(roughness)) - roughnessPenalty(roughness);
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

/** The linearised problem: of a roughness only the stiffness's own part of a row depends, and no prior mean does. */
interface Lines {
  /** ∂/∂u over the ±, a row per reading; but ∂/∂z where it is of the stiffness. */
  design: Float64Array;
  /** What each row should give, u counted from the prior's mean. */
  wanted: Float64Array;
}

function linearised({ model, sigma, unknowns }: FitProblem, best: MostProbable): Lines {
  const { size: n, mean, stiffness } = unknowns;
  const wanted = best.misfit.slice();
  const design = best.design.slice();
  const { jacobian } = best.prediction;
  model.data.forEach((_, d) => {
    const scale = Math.sqrt(best.weight[d]) / sigma[d];
    for (let k = 0; k < n; k++) wanted[d] += scale * jacobian[d * n + k] * (best.z[k] - mean[k]);
    const [from, to] = [d * n + stiffness.start, d * n + stiffness.start + stiffness.size];
    for (let k = from; k < to; k++) design[k] = scale * jacobian[k];
  });
  return { design, wanted };
}

/** The lowest Φ of the linearised problem under other priors, and half ln det A. */
function negativeLogEvidence({ design: lines, wanted }: Lines, unknowns: Unknowns): number {
  const n = unknowns.size;
  const design = lines.slice();
  const right = new Float64Array(n);
  let square = 0;
  wanted.forEach((value, d) => {
    const row = design.subarray(d * n, (d + 1) * n);
    partByStandard(unknowns.stiffness, row);
    for (let k = 0; k < n; k++) right[k] += row[k] * value;
    square += value * value;
  });
  const factor = factorNormalMatrix(design, n, 0);
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
