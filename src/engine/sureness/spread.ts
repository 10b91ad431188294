/** Order statistics of what was read on many blanks. */

/** Where 95 of 100 lie: the 2.5 % and the 97.5 % quantile. */
export interface Spread {
  low: number;
  high: number;
}

/** NaN at both ends where there are no values. */
export function spreadOf(values: readonly number[]): Spread {
  const sorted = [...values].sort((a, b) => a - b);
  return { low: quantile(sorted, 0.025), high: quantile(sorted, 0.975) };
}

/** With what is to be expected, half of them above it and half below: a mean would lean to the few far off. */
export interface ExpectedSpread extends Spread {
  expected: number;
}

export function expectedSpreadOf(values: readonly number[]): ExpectedSpread {
  const sorted = [...values].sort((a, b) => a - b);
  return { expected: quantile(sorted, 0.5), ...spreadOf(values) };
}

/** Linear between the two nearest of ascending values. */
export function quantile(sorted: readonly number[], share: number): number {
  const at = share * (sorted.length - 1);
  const below = Math.max(0, Math.floor(at));
  const above = Math.min(sorted.length - 1, below + 1);
  if (sorted.length === 0) return Number.NaN;
  return sorted[below] + (at - below) * (sorted[above] - sorted[below]);
}

/**
 * How many root mean squares of so many draws 95 of 100 lie within: Student's t, 97.5 %, by its expansion about the normal
 * quantile (Abramowitz & Stegun 26.7.5), to 0.002 from five draws on.
 */
export function reachOf95(draws: number): number {
  const x = 1.959964;
  const terms = [
    x ** 3 + x,
    5 * x ** 5 + 16 * x ** 3 + 3 * x,
    3 * x ** 7 + 19 * x ** 5 + 17 * x ** 3 - 15 * x,
    79 * x ** 9 + 776 * x ** 7 + 1482 * x ** 5 - 1920 * x ** 3 - 945 * x,
  ];
  const over = [4, 96, 384, 92160];
  return terms.reduce((sum, term, i) => sum + term / (over[i] * draws ** (i + 1)), x);
}
