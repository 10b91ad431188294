import { expect, test } from 'vitest';
import { changeWords, labelOf, whoseWords } from './history-words.ts';

test('a change is told in words, quantities as they were typed', () => {
  const path = ['diameters', 'a', 'fromOwnTip'] as const;
  expect(changeWords(path, null, { si: 0.1143, text: '4 1/2 in' })).toBe(
    'diameters, from own tip: empty → 4 1/2 in',
  );
  expect(changeWords(['sections', 'a', 'gone'], null, true)).toBe('sections: a row put away');
});

test('a gesture is told without its id, and an undo by what it took back', () => {
  expect(labelOf('move guide.k3p9x2ab')).toBe('Move guide');
  expect(labelOf('undo:17:move guide.k3p9x2ab')).toBe('Undid: move guide');
});

test('who changed it: another session of this browser is this device still', () => {
  expect(whoseWords('abcd-s1', 'abcd-s2')).toBe('this device');
  expect(whoseWords('server-x', 'abcd-s2')).toBe('the shop’s computer');
  expect(whoseWords('wxyz12-s1', 'abcd-s2')).toBe('device wxyz');
});
