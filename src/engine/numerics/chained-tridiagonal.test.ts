import { expect, test } from 'vitest';
import { chainedTridiagonal, factorChained, solveChained } from './chained-tridiagonal.ts';
import { seededRandom } from './seeded-random.ts';

/** Gaussian elimination with pivoting on the full matrix: a second way, sharing no code with the chain. */
function solveDense(matrix: number[][], b: number[]): number[] {
  const n = b.length;
  const a = matrix.map((row, i) => [...row, b[i]]);
  for (let k = 0; k < n; k++) {
    let best = k;
    for (let i = k + 1; i < n; i++) if (Math.abs(a[i][k]) > Math.abs(a[best][k])) best = i;
    [a[k], a[best]] = [a[best], a[k]];
    for (let i = k + 1; i < n; i++) {
      const f = a[i][k] / a[k][k];
      for (let j = k; j <= n; j++) a[i][j] -= f * a[k][j];
    }
  }
  const x = new Array<number>(n).fill(0);
  for (let i = n - 1; i >= 0; i--) {
    let sum = a[i][n];
    for (let j = i + 1; j < n; j++) sum -= a[i][j] * x[j];
    x[i] = sum / a[i][i];
  }
  return x;
}

/** Cholesky succeeds exactly on positive definite matrices. */
function isPositiveDefinite(matrix: number[][]): boolean {
  const n = matrix.length;
  const l = matrix.map((row) => [...row]);
  for (let j = 0; j < n; j++) {
    for (let k = 0; k < j; k++) for (let i = j; i < n; i++) l[i][j] -= l[i][k] * l[j][k];
    if (l[j][j] <= 0) return false;
    const root = Math.sqrt(l[j][j]);
    for (let i = j; i < n; i++) l[i][j] /= root;
  }
  return true;
}

test.each([1, 2, 3, 4, 5, 6, 7, 8])('the chain solves what full elimination solves (seed %i)', (seed) => {
  const random = seededRandom(seed);
  const n = 12 + Math.floor(random() * 20);
  const spans = seed % 4;
  const system = chainedTridiagonal(n, 4);
  system.spanCount = spans;
  const shift = seed % 2 === 0 ? 3 : 0.4;
  const dense = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    system.diagonal[i] = shift + random();
    dense[i][i] = system.diagonal[i];
    if (i > 0) {
      system.off[i] = random() - 0.5;
      dense[i][i - 1] = system.off[i];
      dense[i - 1][i] = system.off[i];
    }
    system.inner[i] = random() * 2 - 1;
  }
  let high = n - 1 - (seed % 3);
  for (let k = 0; k < spans; k++) {
    const low = k === spans - 1 ? -1 : Math.max(1, high - 3);
    system.last[k] = high;
    system.first[k] = low;
    system.weight[k] = 0.2 + random();
    system.lowEnd[k] = random() - 0.5;
    const a = new Array<number>(n).fill(0);
    for (let i = high; i > low; i--) a[i] = system.inner[i];
    if (low >= 0) a[low] = system.lowEnd[k];
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) dense[i][j] += system.weight[k] * a[i] * a[j];
    high = low;
  }
  const b = Array.from({ length: n }, () => random() - 0.5);
  const definite = factorChained(system);
  const x = new Float64Array(n);
  solveChained(system, Float64Array.from(b), x);
  const expected = solveDense(dense, b);
  for (let i = 0; i < n; i++) expect(x[i]).toBeCloseTo(expected[i], 8);
  expect(definite).toBe(isPositiveDefinite(dense));
});
