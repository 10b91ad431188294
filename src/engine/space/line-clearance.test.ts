import { expect, test } from 'vitest';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import { gripClearance, lineClearance } from './line-clearance.ts';

/** A straight rod along x, tip at x = 1, its rings as high as given at these angles round it. */
function straightRod(rings: readonly { fromTipM: number; heightM: number; aroundRad: number }[]) {
  const points = Array.from({ length: 51 }, (_, i) => ({
    ...{ fromTipM: i / 50, xM: 1 - i / 50, yM: 0, zM: 0 },
    ...{ angleRad: 0, curvaturePerM: 0, sideCurvaturePerM: 0, twistRad: 0 },
  }));
  const places = rings.map(({ fromTipM, heightM, aroundRad }) => ({
    ...{ xM: 1 - fromTipM, yM: -heightM * Math.cos(aroundRad), zM: heightM * Math.sin(aroundRad) },
    lineAngleRad: 0,
  }));
  return { points, rings: places };
}
const outside = piecewiseLinear([0, 1], [0.01, 0.01]);
const clear = (aroundRad: number) =>
  lineClearance(
    straightRod([
      { fromTipM: 0, heightM: 0.02, aroundRad: 0 },
      { fromTipM: 0.4, heightM: 0.02, aroundRad },
    ]),
    { ringFromTipM: [0, 0.4], reelM: [-0.1, 0.03, 0], outside },
  );

test('between two rings of one height the line is nearest halfway: h cos(half the turn) less the blank’s radius', () => {
  for (const turn of [0, 0.6, Math.PI / 2, (2 * Math.PI) / 3]) {
    expect(clear(turn)[0]).toBeCloseTo(0.02 * Math.cos(turn / 2) - 0.005, 9);
  }
});

test('over half a turn at once it runs through the blank’s middle', () => {
  expect(clear(Math.PI)[0]).toBeCloseTo(-0.005, 9);
});

test('the last stretch runs on to the reel, over the blank as far as the grip', () => {
  // from the ring on top at x = 0.6 to the reel on top at x = -0.1: lowest at the ring
  expect(clear(Math.PI)[1]).toBeCloseTo(0.02 - 0.005, 3);
  // from a ring under, to the reel on top: through the blank
  expect(clear(0)[1]).toBeCloseTo(-0.005, 9);
});

test('past a grip behind its front: nearest at the front where the reel stands higher than the line there', () => {
  const rod = straightRod([{ fromTipM: 0.4, heightM: 0.02, aroundRad: Math.PI }]);
  const grip = { reelM: [-0.1, 0.03, 0] as const, buttAngleRad: 0, lengthM: 0.08, radiusM: 0.012 };
  // the line rises by 0.01 over 0.7: at the front 0.02 + 0.01 · 6/7, square to it
  const atFrontM = (0.02 + (0.01 * 6) / 7) * Math.cos(Math.atan(0.01 / 0.7));
  expect(gripClearance(rod, grip)).toBeCloseTo(atFrontM - 0.012, 9);
  expect(gripClearance(rod, { ...grip, radiusM: 0.03 })).toBeCloseTo(atFrontM - 0.03, 9);
});
