/**
 * How blanks of one series differ, before any is measured: their level, a tilt between tip and butt, and waves of
 * wall and lay-up of three lengths. Two factors, on level and tilt and on the waves, are learnt from the blanks.
 *
 * Levels: a judgement. No measured series of real blanks stands behind them.
 */
import type { Matrix } from '../numerics/matrix.ts';
import { gaussianCovariance } from '../stiffness/prior.ts';

/** Standard deviations of ln EI. */
export const seriesBelief = {
  level: 0.06,
  tilt: 0.06,
  long: { sigma: 0.04, perLength: 0.35 },
  middle: { sigma: 0.04, perLength: 0.12 },
  short: { sigma: 0.04, lengthM: 0.045 },
  /** Of the logarithm of each factor. */
  factorSigma: 0.8,
  factors: [0.25, 0.5, 1, 2, 4],
} as const;

/** Covariances of ln EI between blanks, at factors of 1. */
export function differencesOf(fine: Float64Array): { level: Matrix; waves: Matrix } {
  const { level, tilt, long, middle, short } = seriesBelief;
  const n = fine.length;
  const lengthM = fine[n - 1];
  const lean = fine.map((s) => (2 * s) / lengthM - 1);
  const values = new Float64Array(n * n);
  for (let i = 0; i < n; i++)
    for (let j = 0; j < n; j++) values[i * n + j] = level ** 2 + tilt ** 2 * lean[i] * lean[j];
  const waves = gaussianCovariance(fine, [
    { sigma: long.sigma, lengthM: long.perLength * lengthM },
    { sigma: middle.sigma, lengthM: middle.perLength * lengthM },
    short,
  ]);
  return {
    level: { rows: n, columns: n, values },
    waves: { rows: n, columns: n, values: waves },
  };
}
