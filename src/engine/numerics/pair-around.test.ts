import fc from 'fast-check';
import { expect, test } from 'vitest';
import { pairAround } from './pair-around.ts';

const rows = fc.uniqueArray(fc.integer({ min: -50, max: 50 }), { minLength: 2, maxLength: 12 });

test('the pair holds what lies between the ends, whichever way the rows run', () => {
  fc.assert(
    fc.property(rows, fc.integer({ min: -60, max: 60 }), (found, at) => {
      const up = Float64Array.from(found).sort();
      const inside = Math.min(Math.max(at, up[0]), up[up.length - 1]);
      for (const one of [up, up.toReversed()]) {
        const low = pairAround(one, at);
        expect(low).toBeGreaterThanOrEqual(0);
        const [a, b] = [one[low], one[low + 1]];
        expect(Math.min(a, b) <= inside && inside <= Math.max(a, b)).toBe(true);
      }
    }),
    { seed: 3, numRuns: 200 },
  );
});

test('on a row the pair begins with it, and one row is a pair of itself', () => {
  expect(pairAround(Float64Array.of(0, 1, 2, 3), 2)).toBe(2);
  expect(pairAround(Float64Array.of(3, 2, 1, 0), 2)).toBe(1);
  expect(pairAround(Float64Array.of(7), 9)).toBe(0);
});
