import { expect, test } from 'vitest';
import { reachOf95 } from './spread.ts';

// Abramowitz & Stegun, Handbook of Mathematical Functions, table 26.10
test.each([
  [5, 2.571],
  [10, 2.228],
  [16, 2.12],
  [30, 2.042],
  [120, 1.98],
])('of %i draws 95 of 100 lie within %d root mean squares', (draws, reach) => {
  expect(Math.abs(reachOf95(draws) - reach)).toBeLessThan(0.002);
});
