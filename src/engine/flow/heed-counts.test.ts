import { expect, test } from 'vitest';
import { heedCounts } from './heed-counts.ts';
import type { NextMove } from './next-move.ts';

const beyond: NextMove = {
  code: 'beyond-limits',
  now: { metric: 'lineAngle', load: 0, index: 3, value: 0.3, limit: 0.26, ratio: 1.15 },
};

test('where neither a move nor placing keeps the limits, the fewest guides that do are what to use', () => {
  expect(heedCounts(beyond, { placedWorst: 1.1, fewest: 11 })).toMatchObject({
    code: 'more-guides',
    fewest: 11,
  });
  expect(heedCounts(beyond, { placedWorst: 1.1, fewest: undefined })).toBe(beyond);
  const placing: NextMove = { ...beyond, code: 'place-anew' };
  expect(heedCounts(placing, { placedWorst: 0.9, fewest: 10 })).toBe(placing);
});

test('within the limits nothing changes, nor where nothing can be compared', () => {
  expect(heedCounts({ code: 'keep', now: beyond.now }, { placedWorst: 1.1, fewest: 11 }).code).toBe('keep');
  const within: NextMove = { code: 'as-even-as-it-gets', now: { ...beyond.now, ratio: 0.95 } };
  expect(heedCounts(within, { placedWorst: 0.95, fewest: 9 })).toBe(within);
  const lost: NextMove = { ...beyond, code: 'no-bend' };
  expect(heedCounts(lost, { placedWorst: undefined, fewest: 9 })).toBe(lost);
});
