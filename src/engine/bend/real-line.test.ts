import { expect, test } from 'vitest';
import { assertGroup } from '../../../reference/cases/check.ts';
import { capstan } from '../../../reference/cases/friction.ts';
import { uniformRod } from '../../../reference/cases/unit-rod.ts';
import { randomBendRequest } from '../../../reference/population.ts';
import { momentsFromStatics } from '../../../reference/statics.ts';
import { type BendRequest, bend, loadingOf } from './bend.ts';
import { settleContact } from './contact.ts';
import { makeWorkspace } from './equilibrium.ts';
import { followLoad } from './follow.ts';
import { frictionEnds } from './friction-range.ts';
import { buildMesh } from './mesh.ts';
import { rodTables } from './rod.ts';

const lined = Array.from({ length: 60 }, (_, i) => i + 1)
  .map((seed) => ({ seed, request: randomBendRequest(seed, 'bench') }))
  .filter(({ request }) => request.load.line);

test('tension over a ring changes as the capstan does', () => {
  assertGroup(capstan());
});

test.each([0.1, 0.3])('friction %d: every tension follows the line angle, in and out', (coefficient) => {
  for (const { seed, request } of lined) {
    for (const direction of ['in', 'out'] as const) {
      const answer = bend({ ...request, friction: { coefficient, direction } });
      expect(answer.status, `seed ${seed} ${direction}`).toBe('converged');
      let tension = request.load.line!.tensionN;
      answer.rings.forEach(({ lineAngleRad }, k) => {
        tension *= Math.exp((direction === 'in' ? coefficient : -coefficient) * lineAngleRad);
        expect(answer.lineTensionN![k] / tension).toBeCloseTo(1, 7);
      });
    }
  }
});

test('with friction the moments from the statics of the answer are still those of the rod', () => {
  for (const { request } of lined.slice(0, 12)) {
    const straight: BendRequest = { ...request, rod: { ...request.rod, restCurvature: undefined } };
    const answer = bend(
      { ...straight, friction: { coefficient: 0.25, direction: 'in' } },
      { resolution: 1200 },
    );
    const statics = momentsFromStatics(straight, answer);
    const clamp = answer.points.length - 1;
    const largest = Math.max(...statics.map(({ momentNm }) => Math.abs(momentNm)));
    const elastic = straight.rod.stiffness.at(-1)!.EINm2 * answer.points[clamp].curvaturePerM;
    expect(Math.abs(elastic - statics[clamp].momentNm)).toBeLessThan(
      2e-3 * largest + 1e-5 * statics[clamp].grossNm,
    );
  }
});

test('over a range of coefficients the line at the reel pulls hardest coming in, least going out', () => {
  for (const { request } of lined.slice(0, 10)) {
    const bends = frictionEnds({ lowest: 0.1, highest: 0.3 }).map((friction) => ({
      friction,
      answer: bend({ ...request, friction }),
    }));
    const [inLow, inHigh, outLow, outHigh] = bends.map(({ answer }) => answer.lineTensionN!.at(-1)!);
    const pull = request.load.line!.tensionN;
    expect(inHigh > inLow && inLow > pull && pull > outLow && outLow > outHigh).toBe(true);
  }
});

test('no friction is the limit of little friction', () => {
  for (const { request } of lined.slice(0, 10)) {
    const free = bend(request).points[0];
    const none = bend({ ...request, friction: { coefficient: 0, direction: 'out' } }).points[0];
    expect(Math.hypot(none.xM - free.xM, none.yM - free.yM)).toBeLessThan(1e-9);
    const apart = [1e-3, 5e-4].map((coefficient) => {
      const little = bend({ ...request, friction: { coefficient, direction: 'in' } }).points[0];
      return Math.hypot(little.xM - free.xM, little.yM - free.yM);
    });
    expect(apart[0] / apart[1]).toBeCloseTo(2, 1);
  }
});

/** A rod naturally bent to a circle and too stiff to leave it, guides on its outer side. */
function circleRod(radiusM: number, blankM: number, heightM: number, guidesFromTipM: number[]): BendRequest {
  return {
    rod: {
      lengthM: 1.5,
      stiffness: [{ fromTipM: 0, EINm2: 1e8 }],
      restCurvature: [{ fromTipM: 0, perM: -1 / radiusM }],
    },
    buttAngleRad: 0.5,
    guides: guidesFromTipM.map((fromTipM) => ({ fromTipM, ringHeightM: heightM, side: 'over' })),
    reel: { alongM: -0.05, offsetM: 0.05 },
    load: { line: { tensionN: 3, pullAngleRad: -1.2 } },
    contact: { diameters: [{ fromTipM: 0, outsideM: 2 * blankM }] },
  };
}

test('on a circular blank the line touches where its tangent from the ring meets the surface', () => {
  const [radiusM, blankM, heightM] = [1.4, 0.004, 0.012];
  const { contact } = bend(circleRod(radiusM, blankM, heightM, [0, 0.9, 1.2]), { resolution: 1500 });
  // from a ring centre at radius R + h the tangent meets the surface of radius R + r after this much of axis
  const reach = radiusM * Math.acos((radiusM + blankM) / (radiusM + heightM));
  const [wide, narrow] = contact!.stretches;
  expect(wide.touches).toBe(true);
  expect(wide.touchedFromTipM).toBeCloseTo(reach, 2);
  expect(wide.touchedToTipM).toBeCloseTo(0.9 - reach, 2);
  expect(narrow.touches).toBe(2 * reach < 0.3);
  for (const { fromTipM, largestClearM } of contact!.clear) {
    if (fromTipM < 0.9) expect(largestClearM).toBeCloseTo(2 * reach, 2);
  }
});

test('friction acts on the blank too: the line wound over it loses by its whole turn', () => {
  const request = circleRod(1.4, 0.004, 0.012, [0, 0.9]);
  const answer = bend({ ...request, friction: { coefficient: 0.2, direction: 'in' } });
  const turnInRings = answer.rings.reduce((sum, { lineAngleRad }) => sum + lineAngleRad, 0);
  const whole = Math.log(answer.lineTensionN![1] / 3) / 0.2;
  expect(whole).toBeGreaterThan(turnInRings + 0.3);
});

test('the tension at the reel has rubbed over the last stretch too', () => {
  const request = circleRod(1.4, 0.004, 0.012, [0, 0.4]);
  const answer = bend({ ...request, friction: { coefficient: 0.2, direction: 'in' } });
  expect(answer.contact!.stretches[1].touches).toBe(true);
  const turns = answer.rings.map(({ lineAngleRad }) => lineAngleRad);
  const behindLastRing = 3 * Math.exp(0.2 * (turns[0] + turns[1]));
  // the blank lies under the line for most of 1.1 m of a circle of 1.4 m, and all of that turn rubs (capstan)
  const onBlank = Math.log(answer.lineTensionN!.at(-1)! / behindLastRing) / 0.2;
  expect(onBlank).toBeGreaterThan(0.4);
  expect(onBlank).toBeLessThan(1.1 / 1.4 + 0.15 + 0.8);
});

test('a line that lies along the axis of the blank is the dead tip force', () => {
  const request: BendRequest = {
    rod: uniformRod,
    buttAngleRad: 0,
    guides: [0, 0.4, 0.8].map((fromTipM) => ({ fromTipM, ringHeightM: 0, side: 'over' })),
    reel: { alongM: 0, offsetM: 0 },
    load: { line: { tensionN: 2, pullAngleRad: -Math.PI / 2 } },
  };
  const dead = bend({ rod: uniformRod, buttAngleRad: 0, load: { tip: { xN: 0, yN: -2 } } }).points[0];
  const free = bend(request).points[0];
  const lying = bend({ ...request, contact: { diameters: [{ fromTipM: 0, outsideM: 0 }] } });
  expect(lying.contact!.stretches.every(({ touches }) => touches)).toBe(true);
  expect(Math.hypot(free.xM - dead.xM, free.yM - dead.yM)).toBeGreaterThan(1e-3);
  expect(Math.hypot(lying.points[0].xM - dead.xM, lying.points[0].yM - dead.yM)).toBeLessThan(5e-6);
});

test('guides below a rod bent down never touch, and contact changes nothing', () => {
  const request = circleRod(1.4, 0.004, 0.012, [0, 0.5, 1]);
  const below: BendRequest = {
    ...request,
    guides: request.guides!.map((guide) => ({ ...guide, side: 'under' })),
  };
  const answer = bend(below);
  expect(answer.contact!.stretches.slice(0, 2).some(({ touches }) => touches)).toBe(false);
  const { contact: _, ...without } = below;
  expect(answer.points[0].yM).toBeCloseTo(bend(without).points[0].yM, 9);
});

test('the line presses on the blank, never pulls at it, and never cuts into it', () => {
  let pressed = 0;
  for (const { request } of lined.slice(0, 25)) {
    const mesh = buildMesh(
      rodTables(request.rod),
      request.guides!.map((guide) => guide.fromTipM),
      [],
      { resolution: 200 },
    );
    const work = makeWorkspace(mesh);
    const loading = loadingOf({
      ...request,
      guides: request.guides!.map((guide) => ({ ...guide, side: 'over' })),
    });
    if (followLoad(mesh, loading, request.buttAngleRad, work).status !== 'converged') continue;
    const radiusM = new Float64Array(mesh.count + 1).fill(0.0015);
    const touching = settleContact(mesh, loading, { side: 1, radiusM }, undefined, work);
    expect(touching.converged).toBe(true);
    const { xM, yM, theta, ringXM, ringYM } = touching.work;
    const across = (k: number, x: number, y: number, next: number) => {
      const [dx, dy] = [ringXM[k] - ringXM[next], ringYM[k] - ringYM[next]];
      return (dx * (y - ringYM[next]) - dy * (x - ringXM[next])) / Math.hypot(dx, dy);
    };
    touching.ringOfSupport.forEach((ring, k) => {
      if (ring < 0 && k + 1 < touching.ringOfSupport.length) {
        pressed++;
        // a place that is pressed stands out from the straight line between its neighbours
        expect(across(k - 1, ringXM[k], ringYM[k], k + 1)).toBeGreaterThan(-1e-12);
      }
      if (k + 1 === touching.ringOfSupport.length) return;
      for (let node = touching.mesh.ringNode[k + 1] + 1; node < touching.mesh.ringNode[k]; node++) {
        const [x, y] = [xM[node] - 0.0015 * Math.sin(theta[node]), yM[node] + 0.0015 * Math.cos(theta[node])];
        expect(across(k, x, y, k + 1)).toBeLessThan(1.1e-6);
      }
    });
  }
  expect(pressed).toBeGreaterThan(50);
});

test('random rods with guides on top: contact settles', () => {
  for (const { seed, request } of lined) {
    const over: BendRequest = {
      ...request,
      guides: request.guides!.map((guide) => ({ ...guide, side: 'over' })),
      contact: {
        diameters: [
          { fromTipM: 0, outsideM: 0.002 },
          { fromTipM: request.rod.lengthM, outsideM: 0.007 },
        ],
      },
    };
    const answer = bend(over);
    expect(answer.status, `seed ${seed}: ${answer.reason?.code}`).toBe('converged');
    expect(answer.contact!.stretches).toHaveLength(over.guides!.length);
  }
});
