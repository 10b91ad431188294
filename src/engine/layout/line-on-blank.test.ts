import { expect, test } from 'vitest';
import { castingBlank, castingDiameters as diameters } from '../../../test/support/casting-blank.ts';
import { bend } from '../bend/bend.ts';
import { ladderDefaults } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { bendRequestOf } from './laid-bend.ts';
import { lineOnBlank } from './line-on-blank.ts';

/** An invented 7 ft casting blank, guides on top. */
const request = (count: number, loadsN: readonly number[]): LadderRequest => ({
  rod: castingBlank,
  buttAngleRad: 0.6,
  reel: { alongM: -0.09, offsetM: 0.03 },
  guides: { count, ringHeightsM: new Array(count).fill(0.01), side: 'over' },
  tipTop: { ringHeightM: 0.004 },
  ladder: loadsN.map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
  limits: { lineAngleRad: 0.26, gapM: 0.007, extraBendPerM: 0.07 },
});
const even = (count: number) => Array.from({ length: count }, (_, i) => 0.1 + (1.15 * i) / (count - 1));
const read = (count: number, loadsN: readonly number[]) =>
  lineOnBlank({ ladder: request(count, loadsN), fromTipM: even(count), diameters });

test('more load touches more, more guides touch less; what is touched lies in its own stretch', () => {
  const [light, heavy] = read(5, [0.2, 15]);
  expect(light.clear).toBe(true);
  expect(heavy.clear).toBe(false);
  expect(heavy.touched.length).toBeGreaterThan(0);
  const stations = [0, ...even(5), 1.75];
  for (const { stretch, fromTipM, toTipM } of heavy.touched) {
    expect(fromTipM).toBeGreaterThanOrEqual(stations[stretch]);
    expect(toTipM).toBeLessThanOrEqual(stations[stretch + 1]);
  }
  expect(read(12, [15])[0].touched.length).toBeLessThan(heavy.touched.length);
});

test('a stretch is touched where the chord of its rings cuts the blank in the bend without contact', () => {
  const ladder = request(5, [0.2]);
  const fromTipM = even(5);
  const { points, rings } = bend(bendRequestOf({ ladder, fromTipM }, ladder.ladder[0]), ladderDefaults);
  // chord against every place of the axis, by elementary geometry
  const depths = rings.slice(1).map((ring, k) => {
    const before = rings[k];
    const chordM = Math.hypot(ring.xM - before.xM, ring.yM - before.yM);
    const within = points.filter((p) => p.fromTipM > [0, ...fromTipM][k] && p.fromTipM < fromTipM[k]);
    return Math.min(
      ...within.map((p) => {
        const cross = (ring.xM - before.xM) * (p.yM - before.yM) - (ring.yM - before.yM) * (p.xM - before.xM);
        return cross / chordM - (0.001 + (0.005 * p.fromTipM) / 1.75);
      }),
    );
  });
  expect(Math.min(...depths)).toBeGreaterThan(0);
  expect(read(5, [0.2])[0].touched).toEqual([]);
});

test('a line to a low reel runs through a thick foregrip, and clears a thin one', () => {
  const clear = (radiusM: number) =>
    lineOnBlank({
      ladder: request(8, [1]),
      fromTipM: even(8),
      diameters,
      foregrip: { lengthM: 0.06, radiusM },
    })[0];
  expect(clear(0.008).foregripClearM).toBeGreaterThan(0);
  const thick = clear(0.035);
  expect(thick.foregripClearM).toBeLessThan(0);
  expect(thick.clear).toBe(false);
  expect(clear(0.035).foregripClearM! + 0.035).toBeCloseTo(clear(0.008).foregripClearM! + 0.008, 12);
});
