import { expect, test } from 'vitest';
import { solveConvexQp } from './convex-qp.ts';
import { seededRandom } from './seeded-random.ts';

function randomQp(seed: number) {
  const random = seededRandom(seed);
  const number = () => 2 * random() - 1;
  const n = 2 + (seed % 6);
  const root = Array.from({ length: n * n }, number);
  const hessian = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j < n; j++) {
      hessian[i * n + j] = i === j ? 0.05 : 0;
      for (let k = 0; k < n; k++) hessian[i * n + j] += root[i * n + k] * root[j * n + k];
    }
  }
  const linear = Float64Array.from({ length: n }, number);
  const inside = Float64Array.from({ length: n }, number);
  const rows = Array.from({ length: 4 * n }, () => Float64Array.from({ length: n }, number));
  // doubled and scaled rows make the corner degenerate on purpose
  rows.push(
    rows[0].map((a) => 2 * a),
    rows[1].slice(),
  );
  const bounds = rows.map((row) => row.reduce((sum, a, i) => sum + a * inside[i], 0) - 0.3 * random());
  bounds[rows.length - 2] = 2 * bounds[0];
  bounds[rows.length - 1] = bounds[1];
  return { n, hessian, linear, rows, bounds };
}

test.each(Array.from({ length: 60 }, (_, i) => i + 1))(
  'the Karush-Kuhn-Tucker conditions hold at the answer (seed %i)',
  (seed) => {
    const { n, hessian, linear, rows, bounds } = randomQp(seed);
    const answer = solveConvexQp({ hessian, linear, rows, bounds });
    expect(answer.status).toBe('solved');
    const at = (row: Float64Array) => row.reduce((sum, a, i) => sum + a * answer.x[i], 0);
    expect(Math.min(...rows.map((row, i) => at(row) - bounds[i]))).toBeGreaterThan(-1e-9);
    answer.active.forEach((i, k) => {
      expect(Math.abs(at(rows[i]) - bounds[i])).toBeLessThan(1e-9);
      expect(answer.multipliers[k]).toBeGreaterThanOrEqual(-1e-12);
    });
    for (let i = 0; i < n; i++) {
      let gradient = linear[i];
      for (let j = 0; j < n; j++) gradient += hessian[i * n + j] * answer.x[j];
      const forces = answer.active.reduce((sum, row, k) => sum + answer.multipliers[k] * rows[row][i], 0);
      expect(gradient).toBeCloseTo(forces, 8);
    }
  },
);

test('constraints that exclude each other are told from ones that do not', () => {
  const problem = {
    hessian: Float64Array.of(1, 0, 0, 1),
    linear: Float64Array.of(0, 0),
    rows: [Float64Array.of(1, 1), Float64Array.of(-1, -1)],
  };
  expect(solveConvexQp({ ...problem, bounds: [1, -1] }).status).toBe('solved');
  expect(solveConvexQp({ ...problem, bounds: [1, -0.9] }).status).toBe('infeasible');
});

test('a nearly flat objective finds the corner of a linear program', () => {
  // min -x - 2y on the triangle x, y ≥ 0, x + y ≤ 1: the corner (0, 1)
  const answer = solveConvexQp({
    hessian: Float64Array.of(1e-6, 0, 0, 1e-6),
    linear: Float64Array.of(-1, -2),
    rows: [Float64Array.of(1, 0), Float64Array.of(0, 1), Float64Array.of(-1, -1)],
    bounds: [0, 0, -1],
  });
  expect([...answer.x].map((v) => v + 0)).toEqual([expect.closeTo(0, 9), expect.closeTo(1, 9)]);
});

test('a Hessian that is not positive definite is a broken promise', () => {
  const indefinite = {
    hessian: Float64Array.of(1, 2, 2, 1),
    linear: Float64Array.of(0, 0),
    rows: [],
    bounds: [],
  };
  expect(() => solveConvexQp(indefinite)).toThrow('pivot 1');
});
