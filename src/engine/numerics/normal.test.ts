import { expect, test } from 'vitest';
import { normalBelow, normalDensity, normalQuantile } from './normal.ts';

// the integral of the density, by the midpoint rule
test('what lies below is the integral of the density', () => {
  let [sum, at] = [0, -8];
  for (const x of [-2.5, -1.126, -0.3, 0, 0.6745, 1.5, 3]) {
    const step = (x - at) / 2000;
    for (let i = 0; i < 2000; i++) sum += step * normalDensity(at + (i + 0.5) * step);
    at = x;
    expect(Math.abs(normalBelow(x) - sum)).toBeLessThan(1.5e-4);
  }
});

test('a quantile has its share below it', () => {
  for (const share of [0.005, 0.13, 0.5, 0.87, 0.995]) {
    expect(normalBelow(normalQuantile(share))).toBeCloseTo(share, 12);
  }
});
