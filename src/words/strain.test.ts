import { expect, test } from 'vitest';
import { strainWords } from './strain.ts';

const levels = { cautionPercent: 0.25, stopPercent: 0.4, own: false };
const names = ['50 g', '100 g', '200 g', '400 g'];

test('a load where one should stop is named beside the one that asks for caution', () => {
  expect(strainWords(names, [0.11, 0.21, 0.32, 0.406], levels)).toBe(
    'From 200 g on the surface strains 0.32 %, past the caution level of 0.25 %. From 400 g on the surface strains 0.41 %. Do not hang it: stop at 0.4 %.',
  );
});

test('loads within the levels need no words, and the stop level alone is told alone', () => {
  expect(strainWords(names, [0.05, 0.1, 0.15, 0.2], levels)).toBe('');
  expect(strainWords(names, [0.05, 0.1, 0.15, 0.5], levels)).toBe(
    'From 400 g on the surface strains 0.50 %. Do not hang it: stop at 0.4 %.',
  );
});
