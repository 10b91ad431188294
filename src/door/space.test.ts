import { describe, expect, it } from 'vitest';
import { spatialRods } from '../../reference/space/spatial-rods.ts';
import { bend } from '../engine/bend/bend.ts';
import { answerRequest } from './answer-request.ts';
import { bendAnswer, bendRequest } from './shapes/bend.ts';

type Json = Record<string, unknown>;
interface Answer {
  status: string;
  points: Json[];
  rings: Json[];
  gripTorqueNm?: number;
  stable?: boolean;
  findings: { path: string; message: string }[];
}
const ask = async (request: object) => (await answerRequest({ op: 'bend', ...request })) as unknown as Answer;
const { request: spiral } = spatialRods[0];
const { torsion: _, ...untwisted } = spiral.rod;
const planar = {
  ...spiral,
  rod: untwisted,
  guides: spiral.guides?.map(({ aroundRad: __, ...guide }) => ({ ...guide, side: 'over' as const })),
  reel: { alongM: -0.1, offsetM: 0.03 },
};

describe('a bend in space at the door', () => {
  it.each(spatialRods)('$name: asked and answered in shape', async ({ request }) => {
    expect(bendRequest.safeParse({ op: 'bend', ...request }).error).toBeUndefined();
    const answer = JSON.parse(JSON.stringify(await ask(request)));
    expect(bendAnswer.safeParse(answer).error).toBeUndefined();
    expect(answer.status).toBe('converged');
    expect(answer.stable).toBe(true);
    expect(answer.points[0]).toHaveProperty('zM');
    expect(answer.rings[0]).toHaveProperty('zM');
  });

  it('a planar request answers as it did, with or without torsion', async () => {
    const then = bend(planar);
    expect(await ask(planar)).toEqual(then);
    const now = await ask({ ...planar, rod: spiral.rod });
    expect(now.points.map(({ xM, yM }) => [xM, yM])).toEqual(then.points.map(({ xM, yM }) => [xM, yM]));
    expect(now).toMatchObject({ gripTorqueNm: 0, stable: true });
  });

  it('angles round the rod that stay in the plane need no torsion', async () => {
    const guides = planar.guides?.map(({ side: __, ...guide }) => ({ ...guide, aroundRad: -Math.PI }));
    const { points, stable } = await ask({ ...planar, guides });
    expect(points[0].yM).toBe(bend(planar).points[0].yM);
    expect(points[0].zM).toBe(0);
    expect(stable).toBeUndefined();
  });

  it('a pull to the right moves the tip to the right, and a roll to the right moves a ring from under to it', async () => {
    const guides = planar.guides?.map((guide) => ({ ...guide, side: 'under' }));
    const rod = spiral.rod;
    const line = { tensionN: 2, pullAngleRad: -1.5 };
    const pulled = await ask({ ...planar, rod, guides, load: { line: { ...line, pullSideRad: 0.3 } } });
    expect(pulled.points[0].zM).toBeGreaterThan(0.01);
    const rolled = await ask({
      ...planar,
      rod,
      guides,
      rollRad: 0.2,
      load: { line: { ...line, tensionN: 0.01 } },
    });
    expect(rolled.rings[4].zM).toBeGreaterThan(0.001);
    const right = guides?.map(({ side: __, ...guide }) => ({ ...guide, aroundRad: Math.PI / 2 }));
    const besides = await ask({ ...planar, rod, guides: right, load: { line: { ...line, tensionN: 0.01 } } });
    expect(besides.rings[4].zM).toBeGreaterThan(0.004);
  });

  it('rolled with rings under, the clamp must hold against their pushing back', async () => {
    const guides = planar.guides?.map((guide) => ({ ...guide, side: 'under' }));
    const torque = async (side: 'under' | 'over') =>
      (
        await ask({
          ...planar,
          rod: spiral.rod,
          guides: guides?.map((guide) => ({ ...guide, side })),
          rollRad: 0.2,
          load: { line: { tensionN: 4, pullAngleRad: -Math.PI / 2 } },
        })
      ).gripTorqueNm ?? 0;
    expect(await torque('under')).toBeGreaterThan(0);
    expect(await torque('over')).toBeLessThan(0);
  });

  it('a brief answer keeps the tip, its twist too', async () => {
    const whole = await ask(spiral);
    const brief = (await ask({ ...spiral, answer: 'brief' })) as Answer & { tip: Json };
    const { xM, yM, zM, angleRad, twistRad } = whole.points[0];
    expect(brief.points).toBeUndefined();
    expect(brief.tip).toEqual({ xM, yM, zM, angleRad, twistRad });
  });

  it('rings without a line in the load are read along a slack one', async () => {
    const answer = await ask({ ...spiral, load: { tip: { xN: 0, yN: -1, zN: 0.4 } } });
    expect(answer.rings).toHaveLength(spiral.guides?.length ?? 0);
    expect(answer.rings.every(({ lineAngleRad }) => Number.isFinite(lineAngleRad))).toBe(true);
  });
});

describe('a line that may lie on the blank, in space', () => {
  const contact = {
    diameters: [
      { fromTipM: 0, outsideM: 0.003 },
      { fromTipM: spiral.rod.lengthM, outsideM: 0.014 },
    ],
  };
  const few = spiral.guides?.filter((_guide, i, all) => i % 3 === 0 || i === all.length - 1) ?? [];

  it.each<[string, object]>([
    [
      'a spiral of few guides',
      { ...spiral, guides: few.map((guide, i) => ({ ...guide, aroundRad: i < 2 ? 0 : Math.PI })) },
    ],
    [
      'few guides on top, rolled',
      { ...spiral, guides: few.map((guide) => ({ ...guide, aroundRad: Math.PI })), rollRad: 0.17 },
    ],
  ])('%s: the line touches, and the answer fits its shape', async (_name, request) => {
    const answer = JSON.parse(JSON.stringify(await ask({ ...request, contact })));
    expect(bendAnswer.safeParse(answer).error).toBeUndefined();
    expect(answer.status).toBe('converged');
    expect(answer.rings).toHaveLength(few.length);
    expect(answer.contact.stretches).toHaveLength(few.length);
    expect(answer.contact.stretches.some(({ touches }: Json) => touches)).toBe(true);
    const free = await ask(request);
    expect(Math.abs(answer.gripTorqueNm - (free.gripTorqueNm ?? 0))).toBeGreaterThan(1e-4);
  });

  it('a line that clears the blank bends the rod as a free one', async () => {
    const thin = { diameters: [{ fromTipM: 0, outsideM: 1e-4 }] };
    const [free, touching] = [await ask(spiral), await ask({ ...spiral, contact: thin })];
    expect(touching.gripTorqueNm).toBeCloseTo(free.gripTorqueNm ?? 0, 9);
    expect(touching.points[0].zM).toBeCloseTo(free.points[0].zM as number, 9);
  });

  it.each(['in', 'out'] as const)(
    'line %s: the tension grows by exp(±µ·turn) from ring to ring of a spiral',
    async (direction) => {
      const friction = { coefficient: 0.2, direction };
      const answer = (await ask({ ...spiral, friction })) as Answer & { lineTensionN: number[] };
      expect(bendAnswer.safeParse(JSON.parse(JSON.stringify(answer))).error).toBeUndefined();
      let tensionN = spiral.load.line?.tensionN ?? 0;
      expect(answer.lineTensionN).toHaveLength(answer.rings.length);
      answer.rings.forEach(({ lineAngleRad }, k) => {
        tensionN *= Math.exp((direction === 'in' ? 0.2 : -0.2) * (lineAngleRad as number));
        expect(answer.lineTensionN[k]).toBeCloseTo(tensionN, 6);
      });
    },
  );

  it('in the plane it is answered as it was', async () => {
    const guides = few.map(({ aroundRad: _around, ...guide }) => ({ ...guide, side: 'over' as const }));
    const request = { ...planar, guides, contact };
    expect(await ask(request)).toEqual(bend(request));
  });
});

describe('what cannot be answered in space is refused at its field', () => {
  const contact = { diameters: [{ fromTipM: 0, outsideM: 0.01 }] };
  const mixed = planar.guides?.map((guide, i) => ({ ...guide, side: i < 4 ? 'under' : 'over' }));
  it.each<[string, object, string, RegExp]>([
    [
      'sides that differ with contact',
      { ...planar, guides: mixed, contact },
      'contact',
      /stand unlike ways round.*rod.torsion/,
    ],
    [
      'a spiral without torsion',
      { ...spiral, rod: untwisted },
      'rod.torsion',
      /guides\[\d+\]\.aroundRad takes the rod out of its plane/,
    ],
    ['a roll without torsion', { ...planar, rollRad: 0.1 }, 'rod.torsion', /rollRad takes/],
    [
      'a sideways tip force',
      { ...planar, load: { tip: { xN: 0, yN: -1, zN: 1 } } },
      'rod.torsion',
      /load.tip.zN/,
    ],
    [
      'a sideways pull',
      { ...planar, load: { line: { tensionN: 1, pullAngleRad: -1, pullSideRad: 0.1 } } },
      'rod.torsion',
      /pullSideRad/,
    ],
    [
      'a side bow',
      { ...planar, rod: { ...untwisted, restCurvature: [{ fromTipM: 0, perM: 0, sidePerM: 0.1 }] } },
      'rod.torsion',
      /sidePerM/,
    ],
    [
      'GJ of nought',
      { ...spiral, rod: { ...spiral.rod, torsion: [{ fromTipM: 0, GJNm2: 0 }] } },
      'rod.torsion[0].GJNm2',
      /is 0: it should be above 0.*bar across the tip/,
    ],
    [
      'a guide that says it twice',
      { ...planar, guides: [{ fromTipM: 0, ringHeightM: 0.01, side: 'over', aroundRad: 3 }] },
      'guides[0].aroundRad',
      /one of the two/,
    ],
    [
      'a guide that does not say it',
      { ...planar, guides: [{ fromTipM: 0, ringHeightM: 0.01 }] },
      'guides[0].side',
      /"under" or "over"/,
    ],
  ])('%s', async (_name, request, path, message) => {
    const { status, findings } = await ask(request);
    expect(status).toBe('refused');
    const found = findings.find((finding) => finding.path === path);
    expect(found, JSON.stringify(findings)).toBeDefined();
    expect(found?.message).toMatch(message);
  });
});
