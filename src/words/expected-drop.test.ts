import { expect, test } from 'vitest';
import { expectedInWords, expectedPale } from './expected-drop.ts';
import { shopWriter } from './writer.ts';

const w = shopWriter({ system: 'inch' });

test('an edge level with the line is expected at 0, not a thirty-second above it', () => {
  expect(expectedInWords(-0.0008, 'down', w)).toBe('0, level with the line');
  expect(expectedPale(-0.0008, w)).toBe('about 0');
  expect(expectedInWords(0.1064, 'down', w)).toBe('4 1⁄4 in');
  expect(expectedPale(0.1064, w)).toBe('about 4 1⁄4 in');
});

test('an estimate is no finer than it is sure: to an eighth or a millimetre, short drops as a tape reads', () => {
  const mm = shopWriter({ system: 'mm' });
  expect(expectedPale(0.0617, mm)).toBe('about 62 mm');
  expect(expectedPale(0.0044, mm)).toBe('about 4.4 mm');
  expect(expectedPale(0.748, w)).toBe('about 29 1⁄2 in');
});

test('where the edge lies on the other side of the line, it is said which, and how to type it', () => {
  expect(expectedInWords(-0.0064, 'down', w)).toBe('1⁄4 in above the line: type it with a minus');
  expect(expectedInWords(-0.0064, 'up', w)).toBe('1⁄4 in below the line: type it with a minus');
});
