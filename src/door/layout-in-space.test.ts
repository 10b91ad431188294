import { readFileSync } from 'node:fs';
import { describe, expect, it } from 'vitest';
import { answerRequest } from './answer-request.ts';

type Json = Record<string, unknown>;
interface Found {
  status: string;
  fromTipM: number[];
  score: { worst: number; lineAngleRad: number; gapM: number; intoBlankM?: number };
  startScore: { worst: number };
  limits: { lineAngleRad: number; intoBlankM?: number };
  ladder: { tensionN: number; pullAngleRad: number; pullSideRad?: number; tiedN?: number }[];
  findings: { path: string; message: string }[];
}

const [plane] = readFileSync(new URL('../../examples/engine/requests.jsonl', import.meta.url), 'utf8')
  .trim()
  .split('\n')
  .map((line) => JSON.parse(line))
  .filter(({ op }) => op === 'layout');
const { count } = plane.guides;
const ask = async (request: Json) => (await answerRequest(request)) as unknown as Found;
const torsion = plane.rod.stiffness.map(({ fromTipM, EINm2 }: { fromTipM: number; EINm2: number }) => ({
  fromTipM,
  GJNm2: 0.3 * EINm2,
}));
const { side: _, ...guides } = plane.guides;
const onTop = { ...plane, guides: { ...guides, side: 'over' } };
const contact = { diameters: [{ fromTipM: 0, outsideM: 0.012 }] };
/** Over at the reel, under from the fourth guide on. */
const aroundRad = Array.from(
  { length: count },
  (__, i) => [Math.PI, 2.1, 1.05, 0][Math.min(3, count - 1 - i)],
);
const spiral = {
  ...plane,
  rod: { ...plane.rod, torsion },
  guides: { ...guides, aroundRad },
  reel: { ...plane.reel, aroundRad: Math.PI },
};

describe('a layout in space at the door', () => {
  it('a spiral is placed: better than its start, and read by a bend in space as it says', async () => {
    const found = await ask({ ...spiral, ladder: [{ tensionN: 2, pullAngleRad: -1.5, pullSideRad: 0.2 }] });
    expect(found.status).toBe('converged');
    expect(found.score.worst).toBeLessThan(found.startScore.worst);
    const heights = [plane.tipTop.ringHeightM, ...guides.ringHeightsM];
    const masses = [plane.tipTop.massKg ?? 0, ...(guides.massesKg ?? [])];
    const places = [0, ...found.fromTipM];
    const bent = (await answerRequest({
      op: 'bend',
      rod: spiral.rod,
      buttAngleRad: plane.buttAngleRad,
      reel: spiral.reel,
      guides: places.map((fromTipM, i) => ({
        fromTipM,
        ringHeightM: heights[i],
        aroundRad: i === 0 ? aroundRad[0] : aroundRad[i - 1],
      })),
      masses: places.map((fromTipM, i) => ({ fromTipM, massKg: masses[i] ?? 0 })),
      load: { line: { tensionN: 2, pullAngleRad: -1.5, pullSideRad: 0.2 } },
    })) as { rings: { lineAngleRad: number }[]; spans: { gapM: number }[] };
    const turns = bent.rings.slice(1, -1).map((ring) => ring.lineAngleRad);
    expect(found.score.lineAngleRad).toBeCloseTo(Math.max(...turns), 3);
    expect(found.score.gapM).toBeCloseTo(Math.max(...bent.spans.map(({ gapM }) => gapM)), 4);
  }, 60_000);

  it('angles of nought are the side under, digit for digit and without torsion', async () => {
    const ladder = [{ tensionN: 2, pullAngleRad: -1.5 }];
    const sides = await ask({ ...plane, guides: { ...guides, side: 'under' }, ladder });
    const angles = await ask({ ...plane, guides: { ...guides, aroundRad: aroundRad.map(() => 0) }, ladder });
    expect(angles).toEqual(sides);
  }, 60_000);

  it('guides on top: the line counts that cuts into the blank where its diameters are given, else not', async () => {
    const ladder = [{ tensionN: 4, pullAngleRad: -1.5 }];
    const without = await ask({ ...onTop, ladder });
    const found = await ask({ ...onTop, contact, ladder });
    expect(without.limits.intoBlankM ?? without.score.intoBlankM).toBeUndefined();
    expect(found.limits.intoBlankM).toBe(0.001);
    const { intoBlankM = 0, worst } = found.score;
    expect(worst).toBeGreaterThanOrEqual(intoBlankM / 0.001 - 1e-9);
    const again = await ask({
      ...onTop,
      contact,
      ladder,
      limits: found.limits,
      start: { fromTipM: found.fromTipM },
    });
    expect(again.startScore.worst).toBeCloseTo(worst, 9);
  }, 60_000);

  it.each<[string, Json, string, RegExp]>([
    ['a spiral without torsion', { ...spiral, rod: plane.rod }, 'rod.torsion', /unlike ways/],
    ['a roll without torsion', { ...plane, rollRad: 0.1 }, 'rod.torsion', /roll/],
    [
      'too few angles',
      { ...spiral, guides: { ...guides, aroundRad: [0, 1] } },
      'guides.aroundRad',
      /2 angles for/,
    ],
    [
      'angles and a side',
      { ...spiral, guides: { ...plane.guides, aroundRad } },
      'guides.aroundRad',
      /one of the two/,
    ],
    ['contact under the rod', { ...plane, contact }, 'contact', /guides on top/],
    [
      'contact on a rolled rod',
      { ...onTop, rod: { ...plane.rod, torsion }, rollRad: 0.1, contact },
      'contact',
      /plane/,
    ],
    [
      'its limit without contact',
      { ...onTop, limits: { intoBlankM: 0.001 } },
      'limits.intoBlankM',
      /give contact/,
    ],
    ['neither', { ...plane, guides }, 'guides.side', /"under" or "over"/],
  ])('%s is refused at its field', async (__, request, path, message) => {
    const { status, findings } = await ask(request);
    expect(status).toBe('refused');
    expect(findings.find((finding) => finding.path === path)?.message).toMatch(message);
  });
});
