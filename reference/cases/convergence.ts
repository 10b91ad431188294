import { type BendRequest, loadingOf } from '../../src/engine/bend/bend.ts';
import { makeWorkspace } from '../../src/engine/bend/equilibrium.ts';
import { followLoad } from '../../src/engine/bend/follow.ts';
import { buildMesh } from '../../src/engine/bend/mesh.ts';
import { rodTables } from '../../src/engine/bend/rod.ts';
import { randomBendRequest } from '../population.ts';
import type { Check, CheckGroup } from './check.ts';
import { excessDrop } from './line.ts';
import { realisticRods } from './realistic-rods.ts';
import { asShipped, refined } from './unit-rod.ts';

/** Ever more rings on the axis: the line becomes the dead tip force, the difference a quarter at every doubling. */
export function ringConvergence(): CheckGroup {
  const drops = [4, 8, 16, 32].map((rings) => excessDrop(rings, refined));
  const published = [0.002925, 0.0007397, 0.0001854];
  const row = { source: 'second-order limit; drops: collocation on statics', unit: '1' };
  const checks: Check[] = published.map((theirs, k) => ({
    ...row,
    id: `excess drop, ${4 * 2 ** k} rings`,
    quantity: 'drop beyond that of the dead force, share of the length, T L²/EI = 2',
    ours: drops[k],
    theirs,
    allowance: 1e-7,
  }));
  for (let k = 1; k < drops.length; k++) {
    const [from, to] = [4 * 2 ** (k - 1), 4 * 2 ** k];
    checks.push({
      ...row,
      id: `order, ${from} to ${to} rings`,
      quantity: 'log2 of the ratio',
      ours: Math.log2(drops[k - 1] / drops[k]),
      theirs: 2,
      allowance: 0.05,
    });
  }
  return { title: 'Many rings on the axis', about: `${refined.resolution} elements.`, checks };
}

/** Doubling the elements quarters the distance to the finest answer. */
export function meshConvergence(): CheckGroup {
  const checks = realisticRods.map(
    ({ name, request }): Check => ({
      id: `order: ${name}`,
      quantity: 'log2 of the largest change from 300 to 600 elements over that from 600 to 1200',
      source: 'second-order scheme',
      unit: '1',
      ours: observedOrder(request, 300),
      theirs: 2,
      allowance: 0.1,
    }),
  );
  return {
    title: 'Observed order of convergence',
    about: 'Anywhere on the rod, every element halved.',
    checks,
  };
}

/** From a mesh, one with every element halved, and one with every element quartered. */
export function observedOrder(request: BendRequest, resolution: number): number {
  const states = [1, 2, 4].map((times) => solvedOnDividedMesh(request, resolution, times));
  const apart = (k: number) => {
    const [a, b] = [states[k], states[k + 1]];
    let most = 0;
    for (let j = 0; j <= states[0].mesh.count; j++) {
      const dx = a.work.xM[j * a.times] - b.work.xM[j * b.times];
      const dy = a.work.yM[j * a.times] - b.work.yM[j * b.times];
      most = Math.max(most, Math.hypot(dx, dy));
    }
    return most;
  };
  return Math.log2(apart(0) / apart(1));
}

/** Every element of the mesh cut into `times`: its nodes are among the finer one's. */
export function solvedOnDividedMesh(request: BendRequest, resolution: number, times: number) {
  const rings = (request.guides ?? []).map((guide) => guide.fromTipM);
  const tables = rodTables(request.rod);
  const { elementsPerPart } = buildMesh(tables, rings, request.masses ?? [], { resolution });
  const mesh = buildMesh(tables, rings, request.masses ?? [], {
    resolution,
    elementsPerPart: elementsPerPart.map((n) => n * times),
  });
  const work = makeWorkspace(mesh);
  const { status } = followLoad(mesh, loadingOf(request), request.buttAngleRad, work);
  if (status !== 'converged') throw new Error(`${status} with ${mesh.count} elements`);
  return { mesh, work, times };
}

/** Largest distance from the bend that meshes four and eight times as fine tend to, at any node. */
export function placeErrorM(request: BendRequest, resolution: number): number {
  const [ours, finer, finest] = [1, 4, 8].map((times) => solvedOnDividedMesh(request, resolution, times));
  let most = 0;
  for (let j = 0; j <= ours.mesh.count; j++) {
    const limit = (axis: 'xM' | 'yM') => (4 * finest.work[axis][8 * j] - finer.work[axis][4 * j]) / 3;
    most = Math.max(most, Math.hypot(ours.work.xM[j] - limit('xM'), ours.work.yM[j] - limit('yM')));
  }
  return most;
}

/** Random rods as shipped against their own limit. */
export function populationAccuracy(): CheckGroup {
  const rods = 300;
  const errors = Array.from({ length: rods }, (_, i) => {
    const request = randomBendRequest(i + 1, 'bench');
    return (placeErrorM(request, asShipped.resolution) * 3000) / Math.max(3, request.rod.lengthM);
  }).sort((a, b) => a - b);
  const row = { source: 'Richardson (1911) extrapolation from finer meshes', unit: 'mm on 3 m', theirs: 0 };
  const quantile = (share: number) => errors[Math.min(rods - 1, Math.floor(share * rods))];
  const checks: Check[] = [
    { ...row, id: 'median', quantity: 'place error', ours: quantile(0.5), allowance: 0.02 },
    { ...row, id: '99 of 100', quantity: 'place error', ours: quantile(0.99), allowance: 0.2 },
    { ...row, id: 'worst', quantity: 'place error', ours: quantile(1), allowance: 0.2 },
  ];
  const about = `${rods} random rods (population.ts, seeds 1 to ${rods}): 1.5 to 4.3 m, pulls to 25 N in any direction, ${asShipped.resolution} elements. Largest error anywhere on each rod.`;
  return { title: 'Accuracy over a population', about, checks };
}
