import { describe, expect, test } from 'vitest';
import { randomBendRequest } from '../../../reference/population.ts';
import { randomSpaceRequest } from '../../../reference/space/random-problem.ts';
import { type BendRequest, bend } from '../bend/bend.ts';
import { bendInSpace, type SpaceAnswer, type SpaceRequest, solveInSpace } from './bend-in-space.ts';
import { energyInSpace } from './equilibrium-in-space.ts';
import { spaceAnswer } from './space-answer.ts';
import { elementTurn } from './strain.ts';

const seeds = [1, 2, 3, 4, 5, 6, 7, 8];

function sameInSpace({ rod, guides, reel, ...request }: BendRequest): SpaceRequest {
  const aroundRad = (side?: string) => (side === 'over' ? Math.PI : 0);
  return {
    ...request,
    rod: { ...rod, torsion: rod.stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: 0.3 * EINm2 })) },
    guides: guides?.map(({ side, ...guide }) => ({ ...guide, aroundRad: aroundRad(side) })),
    reel: reel && { ...reel, aroundRad: aroundRad(guides?.[0]?.side) },
  };
}

function largestDistance(a: SpaceAnswer, b: SpaceAnswer, turned = (p: readonly number[]) => p): number {
  return a.points.reduce((most, point, i) => {
    const [x, y, z] = turned([point.xM, point.yM, point.zM]);
    return Math.max(most, Math.hypot(x - b.points[i].xM, y - b.points[i].yM, z - b.points[i].zM));
  }, 0);
}

describe('a request that stays in the plane', () => {
  test.each(seeds)('is bent in space as in the plane, element by element (rod %i)', (seed) => {
    const request = randomBendRequest(seed, 'bench');
    const planar = bend(request);
    const spatial = spaceAnswer(solveInSpace(sameInSpace(request)));
    expect(spatial.status).toBe(planar.status);
    planar.points.forEach((point, i) => {
      const other = spatial.points[i];
      expect(Math.hypot(point.xM - other.xM, point.yM - other.yM, other.zM)).toBeLessThan(1e-9);
      expect(Math.abs(point.angleRad - other.angleRad)).toBeLessThan(1e-9);
      expect(Math.abs(point.curvaturePerM - other.curvaturePerM)).toBeLessThan(1e-9);
      expect(Math.abs(other.twistRad)).toBeLessThan(1e-9);
    });
    planar.rings.forEach((ring, k) => {
      expect(Math.abs(ring.lineAngleRad - spatial.rings[k].lineAngleRad)).toBeLessThan(1e-9);
    });
    planar.spans.forEach((span, k) => {
      expect(Math.abs(span.gapM - spatial.spans[k].gapM)).toBeLessThan(1e-9);
      expect(Math.abs(span.extraBendPerM - spatial.spans[k].extraBendPerM)).toBeLessThan(1e-9);
    });
    expect(Math.abs(spatial.gripTorqueNm)).toBeLessThan(1e-9);
  });

  test.each(seeds)('is answered by the planar engine, digit for digit (rod %i)', (seed) => {
    const request = randomBendRequest(seed, 'bench');
    const planar = bend(request);
    const answer = bendInSpace(sameInSpace(request));
    planar.points.forEach((point, i) => {
      expect(answer.points[i]).toEqual({ ...point, zM: 0, sideCurvaturePerM: 0, twistRad: 0 });
    });
    expect(answer.rings).toEqual(planar.rings.map((ring) => ({ ...ring, zM: 0 })));
    expect(answer.spans).toEqual(planar.spans);
    expect(answer.gripTorqueNm).toBe(0);
  });

  test.each(seeds)(
    'rolled by half a turn it is the rod with its rings and its bow the other way up (rod %i)',
    (seed) => {
      const request = sameInSpace(randomBendRequest(seed, 'bench'));
      const answer = bendInSpace(request);
      const turned = bendInSpace({
        ...request,
        rod: {
          ...request.rod,
          restCurvature: request.rod.restCurvature?.map((row) => ({ ...row, perM: -row.perM })),
        },
        rollRad: Math.PI,
        guides: request.guides?.map((guide) => ({ ...guide, aroundRad: guide.aroundRad + Math.PI })),
        reel: request.reel && { ...request.reel, aroundRad: request.reel.aroundRad + Math.PI },
      });
      expect(largestDistance(answer, turned)).toBeLessThan(1e-12);
      expect(turned.stable).toBe(answer.stable);
    },
  );
});

test.each(seeds)(
  'upright, the whole request turned about the butt’s axis turns the answer (rod %i)',
  (seed) => {
    const request = { ...randomSpaceRequest(seed), buttAngleRad: Math.PI / 2, rollRad: 0 };
    const { line } = request.load;
    if (!line) throw new Error('no line');
    const angle = 0.7;
    // positive roll turns down, −d1 = +x here, to the right: about −y
    const turn = ([x, y, z]: readonly number[]) => [
      x * Math.cos(angle) - z * Math.sin(angle),
      y,
      z * Math.cos(angle) + x * Math.sin(angle),
    ];
    const ahead = [
      Math.cos(line.pullSideRad ?? 0) * Math.cos(line.pullAngleRad),
      Math.cos(line.pullSideRad ?? 0) * Math.sin(line.pullAngleRad),
      Math.sin(line.pullSideRad ?? 0),
    ];
    const [px, py, pz] = turn(ahead);
    const tip = request.load.tip ?? { xN: 0, yN: 0, zN: 0 };
    const [xN, yN, zN] = turn([tip.xN, tip.yN, tip.zN ?? 0]);
    const turned = bendInSpace({
      ...request,
      rollRad: angle,
      load: {
        line: { ...line, pullAngleRad: Math.atan2(py, px), pullSideRad: Math.asin(pz) },
        tip: { xN, yN, zN },
      },
    });
    const answer = bendInSpace(request);
    expect(answer.status).toBe('converged');
    expect(largestDistance(answer, turned, turn)).toBeLessThan(1e-8);
    expect(turned.gripTorqueNm).toBeCloseTo(answer.gripTorqueNm, 8);
    turned.rings.forEach((ring, k) => {
      expect(ring.lineAngleRad).toBeCloseTo(answer.rings[k].lineAngleRad, 8);
    });
  },
);

test.each(seeds)('seen in a mirror, left and right change and nothing else (rod %i)', (seed) => {
  const request = randomSpaceRequest(seed);
  const { rod, load, reel } = request;
  const mirrored = bendInSpace({
    ...request,
    rod: {
      ...rod,
      restCurvature: rod.restCurvature?.map((row) => ({ ...row, sidePerM: -(row.sidePerM ?? 0) })),
    },
    rollRad: -(request.rollRad ?? 0),
    guides: request.guides?.map((guide) => ({ ...guide, aroundRad: -guide.aroundRad })),
    reel: reel && { ...reel, aroundRad: -reel.aroundRad },
    load: {
      line: load.line && { ...load.line, pullSideRad: -(load.line.pullSideRad ?? 0) },
      tip: load.tip && { ...load.tip, zN: -(load.tip.zN ?? 0) },
    },
  });
  const answer = bendInSpace(request);
  expect(largestDistance(answer, mirrored, ([x, y, z]) => [x, y, -z])).toBeLessThan(1e-8);
  expect(mirrored.points[0].twistRad).toBeCloseTo(-answer.points[0].twistRad, 8);
  expect(mirrored.gripTorqueNm).toBeCloseTo(-answer.gripTorqueNm, 8);
  mirrored.spans.forEach((span, k) => {
    expect(span.gapM).toBeCloseTo(answer.spans[k].gapM, 8);
  });
});

test.each(seeds)('between rings the twisting moment is constant on a rod without bow (rod %i)', (seed) => {
  const request = randomSpaceRequest(seed);
  const straight = { ...request, masses: [], rod: { ...request.rod, restCurvature: undefined } };
  const spread = (resolution: number) => {
    const { mesh, state } = solveInSpace(straight, { resolution });
    const turn = new Float64Array(13);
    const moments = Array.from({ length: mesh.count }, (_, i) => {
      elementTurn(mesh, state.q, i + 1, turn);
      return turn[5];
    });
    const ends = [mesh.count, ...mesh.ringNode.filter((node) => node < mesh.count), 0];
    return (
      Math.max(
        ...ends.slice(1).map((low, k) => {
          const within = moments.slice(low, ends[k]);
          return Math.max(...within) - Math.min(...within);
        }),
      ) / Math.max(...moments.map(Math.abs))
    );
  };
  const [coarse, fine] = [spread(150), spread(300)];
  expect(fine).toBeLessThan(2e-3);
  expect(coarse / fine).toBeGreaterThan(3);
});

test('a straight rod under a tip force and its own weight does not twist', () => {
  const { rod } = randomSpaceRequest(3);
  const { points, gripTorqueNm } = bendInSpace({
    rod: { ...rod, restCurvature: undefined },
    buttAngleRad: 0.4,
    load: { tip: { xN: 0.2, yN: -1, zN: 2 } },
  });
  expect(points[0].zM).toBeGreaterThan(0.3);
  expect(Math.abs(gripTorqueNm)).toBeLessThan(1e-12);
  for (const { twistRad } of points) expect(Math.abs(twistRad)).toBeLessThan(1e-10);
});

test.each(seeds)('doubling the elements quarters the error (rod %i)', (seed) => {
  const request = randomSpaceRequest(seed);
  const tip = (resolution: number) => {
    const { xM, yM, zM, twistRad } = bendInSpace(request, { resolution }).points[0];
    return [xM, yM, zM, twistRad];
  };
  const [a, b, c] = [150, 300, 600].map(tip);
  const apart = (p: number[], q: number[]) => Math.hypot(...p.map((value, i) => value - q[i]));
  expect(Math.log2(apart(a, b) / apart(b, c))).toBeGreaterThan(1.8);
});

test.each(seeds)('the same request gives the same bits and is left as it was (rod %i)', (seed) => {
  const request = randomSpaceRequest(seed);
  const before = JSON.stringify(request);
  expect(bendInSpace(request)).toEqual(bendInSpace(request));
  expect(JSON.stringify(request)).toBe(before);
});

test('the torque at the grip is the work done per radian of roll', () => {
  const request = randomSpaceRequest(5);
  const energyAt = (rollRad: number) => {
    // the reel is turned with the rod; what the line does there is not the clamp's
    const { mesh, loading, state } = solveInSpace(
      { ...request, rollRad, reel: { alongM: -0.1, offsetM: 0, aroundRad: 0 } },
      { resolution: 200 },
    );
    return energyInSpace(mesh, loading, 1, state);
  };
  const step = 1e-4;
  const roll = request.rollRad ?? 0;
  const answer = bendInSpace(
    { ...request, reel: { alongM: -0.1, offsetM: 0, aroundRad: 0 } },
    { resolution: 200 },
  );
  expect((energyAt(roll + step) - energyAt(roll - step)) / (2 * step)).toBeCloseTo(answer.gripTorqueNm, 6);
});

test('an upright rod in space stands under a little less than Euler’s load and falls to a stable bend beyond', () => {
  const upright = (share: number, zN: number) =>
    bendInSpace({
      rod: { lengthM: 1, stiffness: [{ fromTipM: 0, EINm2: 1 }], torsion: [{ fromTipM: 0, GJNm2: 0.3 }] },
      buttAngleRad: Math.PI / 2,
      rollRad: 0.3,
      // Euler 1744: π²/4 · EI/L²
      load: { tip: { xN: 0, yN: (-share * Math.PI ** 2) / 4, zN } },
    });
  expect(upright(0.99, 0).points[0].yM).toBeCloseTo(1, 9);
  for (const zN of [0, 1e-6]) {
    const { status, stable, points } = upright(1.02, zN);
    expect([status, stable]).toEqual(['converged', true]);
    const sideways = Math.hypot(points[0].xM, points[0].zM);
    // beyond the limit the tip turns by about sqrt(8 (P/P_E - 1)), and moves aside by 2/π of that
    expect(sideways / ((2 / Math.PI) * Math.sqrt(8 * 0.02))).toBeCloseTo(1, 1);
  }
});
