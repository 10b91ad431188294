/**
 * How irregular this blank is, told by its own readings: the factor on the prior's smooth roughness that makes
 * the readings most probable, averaged over what remains possible.
 *
 *   ln p(readings | factor) ≈ -Φ(û) - ½ ln det A        (Laplace; linearised at the present state)
 *
 * under a wide prior of the factor itself, ln factor ~ N(0, 0.6).
 */
import { solveLower } from '../numerics/cholesky.ts';
import { type FitProblem, factorNormalMatrix, type MostProbable } from './most-probable.ts';
import { rowByStandard, type Unknowns } from './unknowns.ts';

const roughnessFactors: readonly number[] = [0.35, 0.5, 0.7, 1, 1.4, 2];

/** `unknownsFor` gives the same unknowns under another factor. */
export function probableRoughness(
  problem: FitProblem,
  best: MostProbable,
  unknownsFor: (factor: number) => Unknowns,
): number {
  const logs = roughnessFactors.map((factor) => {
    return -negativeLogEvidence(problem, best, unknownsFor(factor)) - roughnessPenalty(factor);
  });
  const most = Math.max(...logs);
  let total = 0;
  let sum = 0;
  logs.forEach((log, i) => {
    const p = Math.exp(log - most);
    total += p;
    sum += p * Math.log(roughnessFactors[i]);
  });
  return Math.exp(sum / total);
}

/** -ln of the factor's own prior. */
export function roughnessPenalty(factor: number): number {
  return 0.5 * (Math.log(factor) / 0.6) ** 2;
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
