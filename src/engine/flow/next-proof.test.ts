import { expect, test } from 'vitest';
import { hungBefore } from '../load-test/judge-proof.ts';
import { nextProofKg } from './next-proof.ts';

test('the next weight is heavier than all that hung, can be put together, and was never hung', () => {
  for (const hung of [[0.05], [0.1, 0.2, 0.05], [0, 0.5], [1.3]]) {
    const next = nextProofKg(hung, []) ?? 0;
    expect(next).toBeGreaterThan(1.2 * Math.max(...hung));
    expect(hungBefore(next, hung)).toBeUndefined();
    expect((next * 1000) % 1).toBeCloseTo(0, 6);
  }
});

test('with nothing hung yet it is the ladder’s lightest; without a ladder there is none', () => {
  expect(nextProofKg([0], [0.2, 0.05])).toBe(0.05);
  expect(nextProofKg([], [])).toBeUndefined();
});
