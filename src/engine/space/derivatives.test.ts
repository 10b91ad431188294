import { expect, test } from 'vitest';
import { randomSpaceProblem } from '../../../reference/space/random-problem.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { assembleInSpace, energyInSpace } from './equilibrium-in-space.ts';
import { makeSpaceState, placeState, restState } from './state.ts';
import { turnBy } from './turn.ts';

const seeds = [1, 2, 3, 4, 5, 6];

test.each(seeds)(
  'gradient and Hessian are the derivatives of the energy, far from any bend (state %i)',
  (seed) => {
    const { mesh, loading } = randomSpaceProblem(seed, 14);
    const state = makeSpaceState(mesh);
    const random = seededRandom(seed);
    restState(mesh, loading, state);
    const draw = () => 0.6 * (random() - 0.5);
    for (let j = 1; j <= mesh.count; j++) turnBy(state.q, 4 * j, draw(), draw(), draw());
    const there = state.q.slice();
    const factor = 0.7;
    const n = 3 * mesh.count;
    const energyAt = (w: Float64Array) => {
      state.q.set(there);
      for (let j = 1; j <= mesh.count; j++) turnBy(state.q, 4 * j, w[3 * j - 3], w[3 * j - 2], w[3 * j - 1]);
      placeState(mesh, loading.line, state);
      return energyInSpace(mesh, loading, factor, state);
    };
    const zero = new Float64Array(n);
    energyAt(zero);
    assembleInSpace(mesh, loading, factor, state);
    const gradient = state.bendGradient.map((value, i) => value + factor * state.loadGradient[i]);
    const hessian = written(state.hessian, n);
    const scale = hessian.reduce((most, row) => Math.max(most, ...row.map(Math.abs)), 0);
    const h = 2e-4;
    for (let trial = 0; trial < 60; trial++) {
      const w = zero.slice();
      const i = Math.floor(random() * n);
      const j = Math.max(0, Math.min(n - 1, i + Math.floor(9 * (random() - 0.5))));
      const along = (a: number, b: number) => {
        w.fill(0);
        w[i] += a * h;
        w[j] += b * h;
        return energyAt(w);
      };
      const slope = (along(1, 0) - along(-1, 0)) / (2 * h);
      expect(Math.abs(slope - gradient[i]) / scale).toBeLessThan(3e-7);
      const curved = (along(1, 1) - along(1, -1) - along(-1, 1) + along(-1, -1)) / (4 * h * h);
      expect(Math.abs(curved - hessian[i][j] * (i === j ? 1 : 1)) / scale).toBeLessThan(3e-6);
    }
  },
);

/** The chained form written out. */
function written(system: ReturnType<typeof makeSpaceState>['hessian'], size: number): number[][] {
  const m = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const places = [
    [0, 0],
    [1, 1],
    [2, 2],
    [0, 1],
    [0, 2],
    [1, 2],
  ];
  for (let i = 0; i < system.n; i++) {
    places.forEach(([r, c], k) => {
      m[3 * i + r][3 * i + c] = system.diagonal[6 * i + k];
      m[3 * i + c][3 * i + r] = system.diagonal[6 * i + k];
    });
    for (let k = 0; k < 9 && i > 0; k++) {
      m[3 * i + Math.floor(k / 3)][3 * i - 3 + (k % 3)] += system.off[9 * i + k];
      m[3 * i - 3 + (k % 3)][3 * i + Math.floor(k / 3)] += system.off[9 * i + k];
    }
  }
  for (let s = 0; s < system.spanCount; s++) {
    for (let column = 0; column < 2; column++) {
      const a = new Array<number>(size).fill(0);
      for (let i = system.last[s]; i >= Math.max(0, system.first[s]); i--) {
        const from = i === system.first[s] ? system.lowEnd.subarray(6 * s) : system.inner.subarray(6 * i);
        for (let k = 0; k < 3; k++) a[3 * i + k] = from[3 * column + k];
      }
      a.forEach((p, i) => {
        if (p !== 0)
          a.forEach((q, j) => {
            m[i][j] += system.weight[s] * p * q;
          });
      });
    }
  }
  return m;
}
