import { expect, test } from 'vitest';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { gapDimension, widestGap } from './gap-dimension.ts';

/** A circle of 1 m radius with two rings on it: the chord's middle stands `1 − cos` of half the arc inside. */
const turn = (i: number) => (Math.PI * i) / 400;
const circle = {
  xM: Float64Array.from({ length: 101 }, (_, i) => Math.sin(turn(i))),
  yM: Float64Array.from({ length: 101 }, (_, i) => Math.cos(turn(i))),
  rings: [20, 60, 70].map((i) => ({ xM: Math.sin(turn(i)), yM: Math.cos(turn(i)), lineAngleRad: 0.1 })),
  ruled: [
    { ruleGapM: 0.012, ownBendPerM: 1 },
    { ruleGapM: 0.001, ownBendPerM: 1 },
  ],
} as unknown as RuledLoad;

test('the dimension of a gap is as long as the sagitta of the arc, square on the chord', () => {
  const { line, blank } = gapDimension(circle, 0);
  const half = (turn(60) - turn(20)) / 2;
  expect(Math.hypot(line.xM - blank.xM, line.yM - blank.yM)).toBeCloseTo(1 - Math.cos(half), 4);
  const [a, b] = circle.rings;
  const across = (blank.xM - line.xM) * (b.xM - a.xM) + (blank.yM - line.yM) * (b.yM - a.yM);
  expect(Math.abs(across)).toBeLessThan(1e-4);
});

test('the widest gap is the one that is drawn', () => {
  expect(widestGap(circle)).toBe(0);
  expect(widestGap({ ...circle, ruled: [] })).toBe(-1);
});
