/** The second simulator's bend against the first one's, which shares no code with it, and its own sense. */
import { expect, test } from 'vitest';
import { bentByPicard } from './picard-bend.ts';
import { placeOn, randomBlank, trueCurve } from './simulated-bench.ts';
import { readUnlikeBench } from './unlike-bench.ts';
import { unlikeBlank } from './unlike-blanks.ts';

test('going round statics and geometry gives the bend that shooting gives', () => {
  for (const seed of [3, 8]) {
    const blank = randomBlank(seed, { sweepSigmaPerM: 0.01 });
    const hung = [{ fromTipM: 0, massKg: 0.03 }];
    const load = { buttAngleRad: 0.1, clampFromTipM: blank.lengthM, hung };
    const round = bentByPicard(blank, { ...load, givesRadPerNm: 0 });
    const shot = trueCurve(blank, { ...load, turnedRad: 0 });
    for (const share of [0, 0.1, 0.3, 0.7]) {
      const [a, b] = [round, shot].map((curve) => placeOn(curve, share * blank.lengthM));
      expect(Math.hypot(a.xM - b.xM, a.yM - b.yM)).toBeLessThan(1e-4 * blank.lengthM);
    }
  }
});

test('a clamp that gives lets the tip hang lower, and not a rigid one', () => {
  const blank = unlikeBlank(2);
  const clampFromTipM = blank.lengthM - 0.15;
  const load = { buttAngleRad: 0, clampFromTipM, hung: [{ fromTipM: 0, massKg: 0.02 }] };
  const [rigid, giving] = [0, 0.002].map((givesRadPerNm) => bentByPicard(blank, { ...load, givesRadPerNm }));
  const lower = placeOn(rigid, 0).yM - placeOn(giving, 0).yM;
  expect(lower).toBeGreaterThan(0.5e-3);
  expect(lower).toBeLessThan(0.02);
});

test('the same seed reads the same bench; a full one takes 24 readings', () => {
  const [one, again] = [1, 2].map(() => readUnlikeBench(unlikeBlank(3), 'full', 3).request);
  expect(again).toEqual(one);
  const counts = one.setups.map((setup) =>
    setup.kind === undefined ? setup.tests.reduce((sum, { readings }) => sum + readings.length, 0) : 0,
  );
  expect(counts).toEqual([3, 14, 3, 3]);
});
