import { expect, test } from 'vitest';
import { observedOrder } from '../../../reference/cases/convergence.ts';
import { randomBendRequest } from '../../../reference/population.ts';
import { momentsFromStatics } from '../../../reference/statics.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { type BendAnswer, type BendRequest, bend, loadingOf } from './bend.ts';
import { assemble, energyAt, makeWorkspace, placeNodes } from './equilibrium.ts';
import { restAngles } from './follow.ts';
import { buildMesh } from './mesh.ts';
import { rodTables } from './rod.ts';

const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

function meshOf(request: BendRequest, resolution: number) {
  const rings = (request.guides ?? []).map((guide) => guide.fromTipM);
  return buildMesh(rodTables(request.rod), rings, request.masses ?? [], { resolution });
}

function largestDistance(a: BendAnswer, b: BendAnswer): number {
  return a.points.reduce(
    (most, p, i) => Math.max(most, Math.hypot(p.xM - b.points[i].xM, p.yM - b.points[i].yM)),
    0,
  );
}

test.each(seeds)('doubling the elements quarters the error (rod %i)', (seed) => {
  const request = randomBendRequest(seed, 'bench');
  expect(observedOrder(request, 150)).toBeGreaterThan(1.8);
  expect(observedOrder(request, 300)).toBeGreaterThan(1.9);
});

test.each(seeds)('gradient and Hessian are the derivatives of the energy (state %i)', (seed) => {
  const request = randomBendRequest(seed, 'bench');
  const mesh = meshOf(request, 40);
  const work = makeWorkspace(mesh);
  const loading = loadingOf(request);
  const random = seededRandom(seed);
  restAngles(mesh, request.buttAngleRad, work.theta);
  for (let j = 1; j <= mesh.count; j++) work.theta[j] += 0.6 * (random() - 0.5);
  const factor = 0.7;
  const at = (j: number, turn: number) => {
    work.theta[j] += turn;
    placeNodes(mesh, loading.line, work);
    assemble(mesh, loading, factor, work);
    const gradient = work.bendGradient.map((bending, i) => bending + factor * work.loadGradient[i]);
    const energy = energyAt(mesh, loading, factor, work);
    work.theta[j] -= turn;
    return { energy, gradient };
  };
  const dense = denseHessian(mesh.count, () => at(1, 0), work.hessian);
  const { gradient } = at(1, 0);
  const scale = gradient.reduce((most, g) => Math.max(most, Math.abs(g)), 0);
  const h = 1e-5;
  for (let j = 1; j <= mesh.count; j++) {
    const [up, down] = [at(j, h), at(j, -h)];
    expect(Math.abs((up.energy - down.energy) / (2 * h) - gradient[j - 1])).toBeLessThan(1e-6 * scale);
    for (let i = 0; i < mesh.count; i++) {
      const difference = (up.gradient[i] - down.gradient[i]) / (2 * h);
      expect(Math.abs(difference - dense[i][j - 1])).toBeLessThan(1e-6 * Math.max(scale, dense[i][i]));
    }
  }
});

/** The chained form written out. */
function denseHessian(
  n: number,
  assembleNow: () => unknown,
  system: ReturnType<typeof makeWorkspace>['hessian'],
) {
  assembleNow();
  const dense = Array.from({ length: n }, () => new Array<number>(n).fill(0));
  for (let i = 0; i < n; i++) {
    dense[i][i] += system.diagonal[i];
    if (i > 0) {
      dense[i][i - 1] += system.off[i];
      dense[i - 1][i] += system.off[i];
    }
  }
  for (let k = 0; k < system.spanCount; k++) {
    const a = new Array<number>(n).fill(0);
    for (let i = system.last[k]; i > system.first[k]; i--) a[i] = system.inner[i];
    if (system.first[k] >= 0) a[system.first[k]] = system.lowEnd[k];
    for (let i = 0; i < n; i++) for (let j = 0; j < n; j++) dense[i][j] += system.weight[k] * a[i] * a[j];
  }
  return dense;
}

test.each(seeds)('scaling every stiffness and every load alike changes nothing (rod %i)', (seed) => {
  const request = randomBendRequest(seed, 'bench');
  const { rod, masses = [], load } = request;
  const k = 3.7;
  const scaled: BendRequest = {
    ...request,
    rod: {
      ...rod,
      stiffness: rod.stiffness.map((row) => ({ ...row, EINm2: k * row.EINm2 })),
      massPerLength: rod.massPerLength?.map((row) => ({ ...row, kgPerM: k * row.kgPerM })),
    },
    masses: masses.map((mass) => ({ ...mass, massKg: k * mass.massKg })),
    load: {
      line: load.line && { ...load.line, tensionN: k * load.line.tensionN },
      tip: load.tip && { xN: k * load.tip.xN, yN: k * load.tip.yN },
    },
  };
  expect(largestDistance(bend(request), bend(scaled))).toBeLessThan(1e-9);
});

test.each(seeds)('seen from behind, the bend is its mirror image (rod %i)', (seed) => {
  const request = randomBendRequest(seed, 'bench');
  const { rod, load } = request;
  const behind: BendRequest = {
    ...request,
    rod: { ...rod, restCurvature: rod.restCurvature?.map((row) => ({ ...row, perM: -row.perM })) },
    buttAngleRad: Math.PI - request.buttAngleRad,
    guides: request.guides?.map((guide) => ({ ...guide, side: guide.side === 'over' ? 'under' : 'over' })),
    load: {
      line: load.line && { ...load.line, pullAngleRad: Math.PI - load.line.pullAngleRad },
      tip: load.tip && { xN: -load.tip.xN, yN: load.tip.yN },
    },
  };
  const [seen, mirrored] = [bend(request), bend(behind)];
  seen.points.forEach((point, i) => {
    expect(mirrored.points[i].xM).toBeCloseTo(-point.xM, 9);
    expect(mirrored.points[i].yM).toBeCloseTo(point.yM, 9);
    expect(mirrored.points[i].angleRad).toBeCloseTo(Math.PI - point.angleRad, 8);
    expect(mirrored.points[i].curvaturePerM).toBeCloseTo(-point.curvaturePerM, 6);
  });
  seen.rings.forEach((ring, k) => {
    expect(mirrored.rings[k].lineAngleRad).toBeCloseTo(ring.lineAngleRad, 8);
  });
  seen.spans.forEach((span, k) => {
    expect(mirrored.spans[k].gapM).toBeCloseTo(span.gapM, 9);
  });
});

test('small bends add up', () => {
  const { rod } = randomBendRequest(3, 'bench');
  const straight = { lengthM: rod.lengthM, stiffness: rod.stiffness };
  const drop = (xN: number, yN: number, massKg: number) =>
    bend({ rod: straight, buttAngleRad: 0, masses: [{ fromTipM: 0.4, massKg }], load: { tip: { xN, yN } } })
      .points[0].yM;
  const tip = drop(0, -1e-5, 0);
  const mass = drop(0, 0, 1e-6);
  expect(tip).toBeLessThan(0);
  expect(drop(0, -1e-5, 1e-6) / (tip + mass)).toBeCloseTo(1, 6);
  expect(drop(0, -2e-5, 0) / (2 * tip)).toBeCloseTo(1, 6);
});

test.each(seeds)(
  'moments from the statics of the answer are EI times the curvature added (rod %i)',
  (seed) => {
    const request = randomBendRequest(seed, 'bench');
    const answer = bend(request, { resolution: 1200 });
    const statics = momentsFromStatics(request, answer);
    const { stiffness, restCurvature } = request.rod;
    const table = piecewiseLinear(
      stiffness.map((row) => row.fromTipM),
      stiffness.map((row) => row.EINm2),
    );
    const rest =
      restCurvature &&
      piecewiseLinear(
        restCurvature.map((row) => row.fromTipM),
        restCurvature.map((row) => row.perM),
      );
    const largest = statics.reduce((most, { momentNm }) => Math.max(most, Math.abs(momentNm)), 0);
    answer.points.forEach(({ fromTipM, curvaturePerM }, i) => {
      const elastic = valueAt(table, fromTipM) * (curvaturePerM - (rest ? valueAt(rest, fromTipM) : 0));
      const { momentNm, grossNm } = statics[i];
      expect(Math.abs(elastic - momentNm)).toBeLessThan(2e-3 * largest + 1e-5 * grossNm);
    });
  },
);

test.each(seeds)('the same request gives the same bits and is left as it was (rod %i)', (seed) => {
  const request = randomBendRequest(seed, 'harsh');
  const before = JSON.stringify(request);
  const answer = bend(request);
  expect(bend(request)).toEqual(answer);
  expect(JSON.stringify(request)).toBe(before);
});

test('an upright rod stands under a little less than its limit load and falls under a little more', () => {
  const upright = (yN: number) =>
    bend({
      rod: { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }] },
      buttAngleRad: Math.PI / 2,
      load: { tip: { xN: 0, yN } },
    });
  // Euler 1744: π²/4 · EI/L²
  const limitN = Math.PI ** 2 / 4;
  expect(upright(-0.99 * limitN).points[0].yM).toBeCloseTo(1, 9);
  const fallen = upright(-1.02 * limitN);
  expect(fallen.status).toBe('converged');
  // beyond the limit the tip turns by about sqrt(8 (P/P_E - 1))
  expect(Math.abs(fallen.points[0].angleRad - Math.PI / 2)).toBeCloseTo(Math.sqrt(8 * 0.02), 1);
  expect(upright(-3 * limitN).points[0].yM).toBeLessThan(0);
});
