/** The band of ln EI over all kinds of blank that the readings leave: a sum of Student spreads at every row. */
import { solveLower, solveUpper } from '../numerics/cholesky.ts';
import { studentBelow } from '../numerics/student.ts';
import { asSeen, fromMean, type Mixture, type RoughKind, rowsTimes } from './mixture.ts';

/** At the fine rows, what share lies below: one array per share. */
export function mixtureBand(mixture: Mixture, shares: readonly number[]): Float64Array[] {
  const { kinds, rough, mean } = mixture;
  const spreads = rough.map((kind) => spreadsOf(kind, mean.length));
  const middles = middlesOf(mixture);
  const band = shares.map(() => new Float64Array(mean.length));
  for (let i = 0; i < mean.length; i++) {
    const parts = kinds.map(({ rough: r, weight }, k) => ({
      weight,
      middle: middles[k][i],
      sigma: spreads[r][i],
    }));
    shares.forEach((share, s) => {
      band[s][i] = quantileOf(parts, share);
    });
  }
  return band;
}

/** Standard deviation of ln EI in one kind, whatever its shape: √ of the diagonal of K - K Dᵀ S⁻¹ D K. */
function spreadsOf({ covariance, evidence, gain }: RoughKind, width: number): Float64Array {
  const count = gain.length / width;
  const row = new Float64Array(count);
  return Float64Array.from({ length: width }, (_, i) => {
    solveLower(evidence, count, gain.subarray(i * count, (i + 1) * count), row);
    const told = row.reduce((sum, value) => sum + value * value, 0);
    return Math.sqrt(Math.max(1e-8, covariance[i * width + i] - told));
  });
}

/** m + φ + K Dᵀ S⁻¹ (y - D m - D ψ) of every kind. */
function middlesOf({ readings, mean, rough, shapes, kinds }: Mixture): Float64Array[] {
  const off = fromMean(readings, mean);
  const seen = shapes.map(({ change }) => rowsTimes(readings.design, asSeen(change)));
  return kinds.map(({ rough: r, shape }) => {
    const { evidence, gain } = rough[r];
    const left = shape === undefined ? off.slice() : off.map((value, d) => value - seen[shape][d]);
    solveLower(evidence, readings.count, left, left);
    solveUpper(evidence, readings.count, left, left);
    const middle = rowsTimes(gain, left);
    for (let i = 0; i < middle.length; i++) middle[i] += mean[i];
    if (shape !== undefined) for (let i = 0; i < middle.length; i++) middle[i] += shapes[shape].change[i];
    return middle;
  });
}

interface Part {
  weight: number;
  middle: number;
  sigma: number;
}

/** By bisection to about a hundredth of the range, then along the chord: to a thousandth. */
function quantileOf(parts: readonly Part[], share: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { middle, sigma } of parts) {
    low = Math.min(low, middle - 4 * sigma);
    high = Math.max(high, middle + 4 * sigma);
  }
  let [belowLow, belowHigh] = [0, 1];
  for (let halving = 0; halving < 7; halving++) {
    const at = 0.5 * (low + high);
    const below = shareBelow(parts, at);
    if (below < share) [low, belowLow] = [at, below];
    else [high, belowHigh] = [at, below];
  }
  return low + ((high - low) * (share - belowLow)) / (belowHigh - belowLow);
}

function shareBelow(parts: readonly Part[], at: number): number {
  let below = 0;
  for (const { weight, middle, sigma } of parts) below += weight * studentBelow((at - middle) / sigma);
  return below;
}
