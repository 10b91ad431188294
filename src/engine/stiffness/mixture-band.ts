/** The band of ln EI over all kinds of blank that the readings leave: a sum of normal spreads at every row. */
import { solveLower, solveUpper } from '../numerics/cholesky.ts';
import { asSeen, type BlankKind, fromMean, type Mixture, type RoughKind, rowsTimes } from './mixture.ts';

/** At the fine rows, what share lies below: one array per share. */
export function mixtureBand(mixture: Mixture, shares: readonly number[]): Float64Array[] {
  const { kinds, rough, mean } = mixture;
  const spreads = rough.map((kind) => spreadsOf(kind, mean.length));
  const middles = kinds.map((kind) => middlesOf(mixture, kind));
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

function middlesOf({ readings, mean, rough, shapes }: Mixture, { rough: r, shape }: BlankKind): Float64Array {
  const { evidence, gain } = rough[r];
  const change = shape === undefined ? undefined : shapes[shape].change;
  const off = fromMean(readings, mean);
  if (change)
    rowsTimes(readings.design, asSeen(change)).forEach((by, d) => {
      off[d] -= by;
    });
  solveLower(evidence, readings.count, off, off);
  solveUpper(evidence, readings.count, off, off);
  const moved = rowsTimes(gain, off);
  return mean.map((value, i) => value + moved[i] + (change ? change[i] : 0));
}

interface NormalPart {
  weight: number;
  middle: number;
  sigma: number;
}

/** By bisection, to a thousandth. */
function quantileOf(parts: readonly NormalPart[], share: number): number {
  let [low, high] = [Number.POSITIVE_INFINITY, Number.NEGATIVE_INFINITY];
  for (const { middle, sigma } of parts) {
    low = Math.min(low, middle - 3 * sigma);
    high = Math.max(high, middle + 3 * sigma);
  }
  while (high - low > 2e-3) {
    const at = 0.5 * (low + high);
    let below = 0;
    for (const { weight, middle, sigma } of parts) below += weight * normalBelow((at - middle) / sigma);
    if (below < share) low = at;
    else high = at;
  }
  return 0.5 * (low + high);
}

/** Within 1.4e-4 (Bowling, Khasawneh, Kaewkuekool & Cho 2009; from memory, tested against an integral). */
function normalBelow(x: number): number {
  return 1 / (1 + Math.exp(-x * (1.5976 + 0.07056 * x * x)));
}
