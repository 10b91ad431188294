import { expect, test } from 'vitest';
import { bridgedOf, pointsSeen } from './curve-bridges.ts';

/** In mm, as a trace says them. */
const points = [1.1, 1.2, 1.3, 1.4, 6, 8, 6, 1.3, 1.2, 1.1].map((mm) => ({ sigmaM: mm / 1000 }));

test('a stretch told far worse than the marks leave was bridged, by what is beyond them', () => {
  const bridged = [...bridgedOf(points)];
  expect(bridged.map((one) => one > 0)).toEqual(points.map(({ sigmaM }) => sigmaM > 0.002));
  expect(Math.hypot(bridged[5], 0.0013)).toBeCloseTo(0.008, 9);
  expect(pointsSeen(points)).toHaveLength(7);
});

test('points that say no standard error were all seen', () => {
  expect([...bridgedOf([{}, {}, {}])]).toEqual([0, 0, 0]);
  expect(pointsSeen([{}, {}, {}])).toHaveLength(3);
});
