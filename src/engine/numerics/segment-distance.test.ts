import { expect, test } from 'vitest';
import { type Point, segmentDistance } from './segment-distance.ts';

test('skew, parallel and collinear pieces: distances that can be seen by eye', () => {
  const along: [Point, Point] = [
    [-1, 0, 0],
    [1, 0, 0],
  ];
  expect(segmentDistance(...along, [0, -1, 2], [0, 1, 2])).toBeCloseTo(2, 12);
  expect(segmentDistance(...along, [-1, 3, 0], [1, 3, 0])).toBeCloseTo(3, 12);
  expect(segmentDistance(...along, [3, 0, 0], [5, 0, 0])).toBeCloseTo(2, 12);
  // past the end of the first: corner to corner
  expect(segmentDistance(...along, [2, 1, 0], [5, 4, 0])).toBeCloseTo(Math.SQRT2, 12);
  expect(segmentDistance(...along, [0.5, 0, 0], [0.5, 0, 4])).toBeCloseTo(0, 12);
});

test('is the least over a fine grid of places on both', () => {
  const pieces: [Point, Point, Point, Point][] = [
    [
      [0, 0, 0],
      [1, 2, 3],
      [2, -1, 0.5],
      [-1, 2, 2],
    ],
    [
      [0, 0, 0],
      [0.1, 0.2, 0],
      [1, 1, 1],
      [3, 1, -1],
    ],
  ];
  const on = (a: Point, b: Point, s: number) => a.map((part, i) => part + s * (b[i] - part));
  for (const [a, b, c, d] of pieces) {
    let least = Number.POSITIVE_INFINITY;
    for (let i = 0; i <= 300; i++) {
      for (let j = 0; j <= 300; j++) {
        const [p, q] = [on(a, b, i / 300), on(c, d, j / 300)];
        least = Math.min(least, Math.hypot(p[0] - q[0], p[1] - q[1], p[2] - q[2]));
      }
    }
    expect(segmentDistance(a, b, c, d)).toBeLessThanOrEqual(least + 1e-12);
    expect(segmentDistance(a, b, c, d)).toBeCloseTo(least, 3);
  }
});
