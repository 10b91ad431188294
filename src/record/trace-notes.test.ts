import { expect, test } from 'vitest';
import { traceNotesOf, traceNotesText } from './trace-notes.ts';

const finding = { path: 'via[2]', code: 'image/far', values: { apartPx: 4.5, mark: 3 } };

test('what is odd about a picture is kept as data and read back equal', () => {
  const text = traceNotesText([{ ...finding }, finding]);
  expect(text).not.toContain(' ');
  expect(traceNotesOf(text ?? '')).toEqual([finding, finding]);
  expect(traceNotesText([])).toBeNull();
});

test('a record of 0.1 kept sentences: they are read as they were written', () => {
  const then = 'Mark 3 is 4 px off.\nThe tip is not sharp.';
  expect(traceNotesOf(then)).toEqual(['Mark 3 is 4 px off.', 'The tip is not sharp.']);
});

test('more than there is room for is left out from the end, not cut in the middle', () => {
  const long = { ...finding, values: { words: 'x'.repeat(3000) } };
  expect(traceNotesOf(traceNotesText([long, long, long]) ?? '')).toHaveLength(2);
});

test('what is no list of findings is nothing, never an error', () => {
  expect(traceNotesOf('[{"path":1}]')).toEqual([]);
  expect(traceNotesOf('[{"path":')).toEqual([]);
  expect(traceNotesOf(undefined)).toEqual([]);
});
