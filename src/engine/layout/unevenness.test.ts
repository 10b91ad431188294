import { expect, test } from 'vitest';
import { unevennessModel, unevennessOf } from './unevenness.ts';

test('a geometric progression from the tip-top is even, a step in it is not', () => {
  const geometric = [1, 1.2, 1.44, 1.728].map(
    (
      (sum) => (v: number) =>
        (sum += v)
    )(0),
  );
  expect(unevennessOf(geometric)).toBeCloseTo(0, 25);
  // intervals 1 1 2 2: ln 2 comes once and goes once
  expect(unevennessOf([1, 2, 4, 6])).toBeCloseTo(2 * Math.log(2) ** 2, 12);
});

test('the gradient agrees with differences', () => {
  const stations = [0.1, 0.26, 0.4, 0.62, 0.9, 1.3];
  const { gradient } = unevennessModel(stations);
  stations.forEach((station, i) => {
    const at = (by: number) => unevennessOf(stations.with(i, station + by));
    expect(gradient[i]).toBeCloseTo((at(1e-6) - at(-1e-6)) / 2e-6, 5);
  });
});
