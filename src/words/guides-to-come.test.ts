import { expect, test } from 'vitest';
import { guidesToCome } from './guides-to-come.ts';

test('guides of the bag that are still to come are counted by size', () => {
  expect(
    guidesToCome([
      { size: '1/0', count: 4 },
      { size: '2', count: 1 },
    ]),
  ).toBe('4 of size 1/0, 1 of size 2');
});
