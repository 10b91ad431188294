import { describe, expect, test } from 'vitest';
import { pythonWithScipy, scipySpools } from '../../../reference/live/scipy.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { seededRandom } from '../numerics/seeded-random.ts';
import { fanAngles, fanClearance, onLip } from './fan.ts';
import { type SpoolAnswered, spool } from './spool.ts';
import type { SpoolRequest } from './spool-request.ts';
import { clearanceFrom, profileOf } from './surface.ts';

/** Invented, in the ranges of common practice (no source): lip 35 to 60 mm, 45 to 65 mm off the blank, 1 to 5 degrees. */
function drawnSpool(random: () => number): SpoolRequest {
  const between = (low: number, high: number) => low + (high - low) * random();
  const lengthM = between(1.5, 3);
  const firstM = between(0.3, 0.6);
  const ring = (alongM: number, sizeM: number) => ({
    fromTipM: lengthM - alongM,
    ringHeightM: 1.15 * sizeM,
    insideM: 0.7 * sizeM,
  });
  return {
    lengthM,
    spool: {
      lipDiameterM: between(0.035, 0.06),
      alongM: -between(0.02, 0.15),
      offsetM: between(0.045, 0.065),
      tiltRad: between(0.01, 0.09),
    },
    rings: [
      ring(firstM, 0.03),
      ring(firstM + between(0.2, 0.4), 0.016),
      ring(lengthM - 0.1, 0.006),
      ring(lengthM, 0.006),
    ],
    surface: [
      { fromTipM: 0, radiusM: 0.001 },
      { fromTipM: lengthM - 0.001, radiusM: between(0.004, 0.007) },
      { fromTipM: lengthM, radiusM: between(0.01, 0.03) },
      { fromTipM: lengthM + 0.4, radiusM: 0.013 },
    ],
  };
}
const plain = drawnSpool(() => 0.5);
/** A grip too thick for its reel. */
const fat = {
  ...plain,
  surface: plain.surface.map((row, i) => (i === 2 ? { ...row, radiusM: 0.036 } : row)),
};
const answered = (request: SpoolRequest) => spool(request) as SpoolAnswered;

describe('against closed forms', () => {
  test('a spool whose axis runs through ring and next ring: every line turns by the half angle of its cone', () => {
    const straight = {
      ...plain,
      spool: { lipDiameterM: 0.05, alongM: -0.1, offsetM: 0.03, tiltRad: 0 },
      rings: [
        { fromTipM: 1.5, ringHeightM: 0.03, insideM: 0.02 },
        { fromTipM: 0, ringHeightM: 0.03, insideM: 0.005 },
      ],
      lengthM: 2,
    };
    const { lineAngleRad, axisMeetsFromTipM } = answered(straight);
    expect(lineAngleRad.least).toBeCloseTo(Math.atan(0.025 / 0.6), 12);
    expect(lineAngleRad.largest).toBeCloseTo(Math.atan(0.025 / 0.6), 12);
    expect(axisMeetsFromTipM).toBeNull();
  });

  test('where the next stretch is the going on of one line of the fan, that line does not turn', () => {
    const on = (place: { alongM: number; underM: number }) => place;
    const source = plain.spool;
    const ring = on({ alongM: 0.45, underM: 0.03 });
    const from = onLip(source, 0);
    const slope = (ring.underM - from.underM) / (ring.alongM - from.alongM);
    const { least } = fanAngles(source, ring, { alongM: 0.95, underM: ring.underM + 0.5 * slope });
    expect(least).toBeLessThan(1e-12);
  });

  test('the axis meets the blank offset over tangent ahead of the lip, and not beyond the tip', () => {
    const at = (tiltRad: number) =>
      answered({ ...plain, spool: { ...plain.spool, tiltRad } }).axisMeetsFromTipM;
    const { alongM, offsetM } = plain.spool;
    expect(at(0.06)).toBeCloseTo(plain.lengthM - alongM - offsetM / Math.tan(0.06), 12);
    expect([at(0), at(-0.05), at(0.01)]).toEqual([null, null, null]);
  });

  test('over a cylinder the fan is nearest where its highest line ends', () => {
    const surface = [{ fromTipM: 0, radiusM: 0.005 }];
    const rings = [
      { fromTipM: plain.lengthM - 0.5, ringHeightM: 0.02, insideM: 0.02 },
      { fromTipM: 0, ringHeightM: 0.005, insideM: 0.004 },
    ];
    expect(answered({ ...plain, surface, rings }).clearanceM).toBeCloseTo(0.02 - 0.005, 9);
  });

  test('a funnel is straight: the smallest ring keeps its own width, half way the mean of both ends', () => {
    const lipAlongM = plain.spool.alongM;
    const ring = (alongM: number, insideM: number) => ({
      fromTipM: plain.lengthM - alongM,
      ringHeightM: 0.01,
      insideM,
    });
    const rings = [ring(1.4, 0.004), ring(1.2, 0.004), ring((lipAlongM + 1.2) / 2, 0.02)];
    const needed = answered({ ...plain, rings }).insideNeededM;
    expect(needed[0]).toBeCloseTo(0.004, 12);
    expect(needed[1]).toBeCloseTo(0.004, 12);
    expect(needed[2]).toBeCloseTo((plain.spool.lipDiameterM + 0.004) / 2, 12);
  });

  test('distance from a step counts to its corner, and inside it is negative', () => {
    const surface = [
      { fromTipM: 0, radiusM: 0.005 },
      { fromTipM: 1, radiusM: 0.005 },
      { fromTipM: 1, radiusM: 0.012 },
    ];
    const profile = profileOf(surface);
    expect(clearanceFrom(profile, 1 - 0.003, 0.012 + 0.004)).toBeCloseTo(0.005, 12);
    expect(clearanceFrom(profile, 1.5, 0.002)).toBeCloseTo(-0.01, 12);
    expect(clearanceFrom(profile, 1.001, 0.011)).toBeCloseTo(-0.001, 12);
  });
});

test('no line of the fan turns less or more, or comes nearer, than is said', () => {
  const random = seededRandom(14);
  for (let i = 0; i < 20; i++) {
    const asked = drawnSpool(random);
    const { lineAngleRad, clearanceM } = answered(asked);
    const [ring, next] = asked.rings.map(({ fromTipM, ringHeightM }) => ({
      alongM: asked.lengthM - fromTipM,
      underM: ringHeightM,
    }));
    for (let turn = 0; turn < 360; turn += 7) {
      const { alongM, underM, asideM } = onLip(asked.spool, (turn * Math.PI) / 180);
      const one = { widthM: 2 * asideM, alongM, offsetM: underM };
      const { largest } = fanAngles(one, ring, next);
      expect(largest).toBeLessThanOrEqual(lineAngleRad.largest + 1e-12);
      expect(largest).toBeGreaterThanOrEqual(lineAngleRad.least - 1e-12);
      for (let share = 0; share <= 1; share += 0.05) {
        const at = (from: number, to: number) => from + share * (to - from);
        const beside = Math.hypot(at(underM, ring.underM), at(asideM, 0));
        const clear = clearanceFrom(
          profileOf(asked.surface),
          asked.lengthM - at(alongM, ring.alongM),
          beside,
        );
        expect(clear).toBeGreaterThanOrEqual(clearanceM - 1e-9);
      }
    }
  }
});

test('a level-wind of no width is one line; a wider one turns it more and clears the same', () => {
  const ring = { alongM: 0.4, underM: 0.02 };
  const next = { alongM: 0.7, underM: 0.015 };
  const wind = (widthM: number) => ({ widthM, alongM: -0.05, offsetM: 0.03 });
  const narrow = fanAngles(wind(0), ring, next);
  expect(narrow.largest).toBe(narrow.least);
  const wide = fanAngles(wind(0.03), ring, next);
  expect(wide.least).toBeCloseTo(narrow.least, 12);
  expect(wide.largest).toBeGreaterThan(Math.atan(0.015 / 0.45));
  const on = { surface: [{ fromTipM: 0, radiusM: 0.006 }], lengthM: 2 };
  expect(fanClearance(wind(0.03), ring, on).clearanceM).toBeCloseTo(0.02 - 0.006, 9);
});

test('drawn spools, one that cuts into the grip, agree with a search in space', ({ skip }) => {
  const python = pythonWithScipy();
  if (!python) return skip('not run: no Python with scipy on this machine');
  const random = seededRandom(7);
  const asked = [...Array.from({ length: 5 }, () => drawnSpool(random)), fat];
  expect(asked.some((one) => answered(one).clearanceM < 0)).toBe(true);
  scipySpools(python, asked).forEach((theirs, i) => {
    const ours = answered(asked[i]);
    expect(ours.lineAngleRad.least).toBeCloseTo(theirs.least, 6);
    expect(ours.lineAngleRad.largest).toBeCloseTo(theirs.largest, 6);
    expect(Math.abs(ours.clearanceM - theirs.clearanceM)).toBeLessThan(5e-6);
    expect(ours.axisMeetsFromTipM ?? -1).toBeCloseTo(theirs.axisMeetsFromTipM ?? -1, 9);
    ours.insideNeededM.forEach((needed, k) => {
      expect(needed).toBeCloseTo(theirs.insideNeededM[k], 12);
    });
  });
});

describe('what makes no sense is said at its field', () => {
  const refused = (change: Partial<SpoolRequest>) => {
    const answer = spool({ ...plain, ...change });
    return answer.status === 'refused' ? answer.findings : [];
  };
  test.each<[string, Partial<SpoolRequest>, string, RegExp]>([
    [
      'a spool in front of its ring',
      { spool: { ...plain.spool, alongM: 0.8 } },
      'spool.alongM',
      /in front of its ring: 800 mm ahead/,
    ],
    ['a ring smaller than the knot', { knotM: 0.005 }, 'rings[2].insideM', /knot of 5 mm does not pass/],
    ['one ring', { rings: plain.rings.slice(0, 1) }, 'rings', /1 ring.*the next one toward the tip/],
    [
      'two rings at one place',
      { rings: [...plain.rings, plain.rings[1]] },
      'rings[4].fromTipM',
      /ring 2 of the list/,
    ],
    [
      'a ring behind the grip',
      { rings: [...plain.rings, { ...plain.rings[0], fromTipM: 9 }] },
      'rings[4].fromTipM',
      /Measure the ring from the tip/,
    ],
    ['no surface', { surface: [] }, 'surface', /at one place at least/],
    [
      'a surface out of order',
      { surface: plain.surface.toReversed() },
      'surface[1].fromTipM',
      /from the tip to the butt/,
    ],
  ])('%s', (_, change, path, says) => {
    const findings = refused(change);
    expect(findings.map((finding) => finding.path)).toContain(path);
    expect(inWords(findings.find((finding) => finding.path === path))).toMatch(says);
  });
});
