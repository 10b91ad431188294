import { expect, test } from 'vitest';
import { placedWords } from './layout-verdict.ts';

test('marks of a start that is kept are not said to be placed for this blank', () => {
  expect(placedWords({})).toBe('The guides stand as placed for this blank.');
  expect(placedWords({ startKept: 'unsure' })).toMatch(/^Keep the start for now\. /);
  expect(placedWords({ startKept: 'unread' })).toMatch(/^Keep the start\. Nothing was read yet/);
});
