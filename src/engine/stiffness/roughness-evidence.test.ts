import { expect, test } from 'vitest';
import { factorCholesky, logDeterminant, solveLower } from '../numerics/cholesky.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { stiffnessEvidence } from './roughness-evidence.ts';
import { unknownsOf } from './unknowns.ts';

/** Five readings of three stiffnesses and two other unknowns that are standard already. */
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
const problem = {
  model: { data: Array.from({ length: rows }) },
  sigma: new Float64Array(rows).fill(1),
  unknowns: unknownsOf({
    stiffness: diagonal(1, 1, 1),
    rest: none,
    restAcross: none,
    mass: none,
    tilt: diagonal(1, 1),
    drift: none,
    extra: none,
  }),
} as unknown as FitProblem;
const best = {
  prediction: { jacobian },
  design: jacobian,
  misfit,
  weight: new Float64Array(rows).fill(1),
  z: new Float64Array(n),
} as unknown as MostProbable;

/** The density of the readings themselves: y ~ N(0, I + J L Lᵀ Jᵀ + O Oᵀ). */
function density(prior: Float64Array): number {
  const covariance = new Float64Array(rows * rows);
  const spread = (d: number, k: number) => {
    let sum = 0;
    for (let i = k; i < size; i++) sum += jacobian[d * n + i] * prior[i * size + k];
    return k < size ? sum : jacobian[d * n + k];
  };
  for (let a = 0; a < rows; a++) {
    for (let b = 0; b < rows; b++) {
      covariance[a * rows + b] = a === b ? 1 : 0;
      for (let k = 0; k < n; k++) covariance[a * rows + b] += spread(a, k) * spread(b, k);
    }
  }
  expect(factorCholesky(covariance, rows)).toBe(true);
  const white = new Float64Array(rows);
  solveLower(covariance, rows, misfit, white);
  return -0.5 * white.reduce((sum, value) => sum + value * value, logDeterminant(covariance, rows));
}

test('two priors are told apart as by the density of the readings', () => {
  const evidence = stiffnessEvidence(problem, best);
  const [narrow, wide] = [0.3, 2].map((by) => {
    const { mean, factor } = diagonal(by, by, by);
    factor[size] = 0.4 * by;
    return { mean, factor };
  });
  const told = evidence(wide) - evidence(narrow);
  expect(told).toBeCloseTo(density(wide.factor) - density(narrow.factor), 10);
  expect(Math.abs(told)).toBeGreaterThan(0.1);
});
