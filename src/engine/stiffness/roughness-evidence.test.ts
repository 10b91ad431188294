import { expect, test } from 'vitest';
import { factorCholesky, logDeterminant, solveLower } from '../numerics/cholesky.ts';
import { dot } from '../numerics/dot.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { stiffnessEvidence } from './roughness-evidence.ts';
import { unknownsOf } from './unknowns.ts';

/** Five readings of three stiffnesses and two other unknowns that are standard already, the last a tilt or a doubt. */
const [rows, size, n] = [5, 3, 5];
const random = seededRandom(7);
const drawn = (count: number) => Float64Array.from({ length: count }, () => 2 * random() - 1);
const diagonal = (...values: number[]) => {
  const factor = new Float64Array(values.length ** 2);
  values.forEach((value, i) => {
    factor[i * values.length + i] = value;
  });
  return { mean: new Float64Array(values.length), factor };
};
const none = diagonal();
const jacobian = drawn(rows * n);
const misfit = drawn(rows);
const problemWith = (doubts: 0 | 1) =>
  ({
    model: { data: Array.from({ length: rows }) },
    sigma: new Float64Array(rows).fill(1),
    unknowns: unknownsOf({
      stiffness: diagonal(1, 1, 1),
      rest: none,
      restAcross: none,
      mass: none,
      tilt: doubts ? diagonal(1) : diagonal(1, 1),
      drift: none,
      extra: doubts ? diagonal(1) : none,
    }),
  }) as unknown as FitProblem;
const best = {
  prediction: { jacobian },
  design: jacobian,
  misfit,
  weight: new Float64Array(rows).fill(1),
  z: new Float64Array(n),
} as unknown as MostProbable;

/** Cholesky factor of the covariance of the readings themselves, I + J L Lᵀ Jᵀ + O Oᵀ, by the first `known` unknowns. */
function covarianceFactor(prior: Float64Array, known: number): Float64Array {
  const covariance = new Float64Array(rows * rows);
  const spread = (d: number, k: number) => {
    let sum = 0;
    for (let i = k; i < size; i++) sum += jacobian[d * n + i] * prior[i * size + k];
    return k < size ? sum : jacobian[d * n + k];
  };
  for (let a = 0; a < rows; a++) {
    for (let b = 0; b < rows; b++) {
      covariance[a * rows + b] = a === b ? 1 : 0;
      for (let k = 0; k < known; k++) covariance[a * rows + b] += spread(a, k) * spread(b, k);
    }
  }
  expect(factorCholesky(covariance, rows)).toBe(true);
  return covariance;
}

/** ln of the readings' density, its determinant without the doubts: what was freed does not count there. */
function density(prior: Float64Array, doubts: number): number {
  const white = new Float64Array(rows);
  solveLower(covarianceFactor(prior, n), rows, misfit, white);
  return -0.5 * (dot(white, white) + logDeterminant(covarianceFactor(prior, n - doubts), rows));
}

test.each([0, 1] as const)(
  'two priors are told apart as by the density of the readings, with %d doubts',
  (doubts) => {
    const evidence = stiffnessEvidence(problemWith(doubts), best);
    const [narrow, wide] = [0.3, 2].map((by) => {
      const { mean, factor } = diagonal(by, by, by);
      factor[size] = 0.4 * by;
      return { mean, factor };
    });
    const told = evidence(wide) - evidence(narrow);
    expect(told).toBeCloseTo(density(wide.factor, doubts) - density(narrow.factor, doubts), 10);
    expect(Math.abs(told)).toBeGreaterThan(0.1);
  },
);
