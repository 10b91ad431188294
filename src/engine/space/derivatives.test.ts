import { expect, test } from 'vitest';
import { randomSpaceProblem } from '../../../reference/space/random-problem.ts';
import { writtenHessian } from '../../../reference/space/written-hessian.ts';
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
    const hessian = writtenHessian(state.hessian);
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
      expect(Math.abs(curved - hessian[i][j]) / scale).toBeLessThan(3e-6);
    }
  },
);
