import { expect, test } from 'vitest';
import { strainWords } from './strain.ts';

const levels = { cautionPercent: 0.35, stopPercent: 0.5, own: false };
const names = ['50 g', '100 g', '200 g', '400 g'];

test('the heaviest load to hang is named, and what is only computed', () => {
  expect(strainWords(names, [0.11, 0.21, 0.37, 0.516], levels)).toBe(
    'Hang no more than 100 g: 200 g strains the surface by 0.37 %, past the caution level of 0.35 %. Heavier ones are only computed. 400 g strains the surface by 0.52 %, past the stop level of 0.5 %.',
  );
  expect(strainWords(names, [0.11, 0.21, 0.3, 0.4], levels)).toBe(
    'Hang no more than 200 g: 400 g strains the surface by 0.40 %, past the caution level of 0.35 %. Heavier ones are only computed.',
  );
});

test('what is hardly past a level is told finely enough to be past it', () => {
  expect(strainWords(names, [0.1, 0.2, 0.3, 0.3524], levels)).toMatch(/by 0\.352 %, past .* 0\.35 %/);
});

test('loads within the levels need no words; past the stop level at once is told so', () => {
  expect(strainWords(names, [0.05, 0.1, 0.15, 0.2], levels)).toBe('');
  expect(strainWords(names, [0.05, 0.1, 0.15, 0.5], levels)).toBe(
    'Hang no more than 200 g: 400 g strains the surface by 0.50 %, past the stop level of 0.5 %. Heavier ones are only computed.',
  );
  expect(strainWords(names, [0.36, 0.4, 0.42, 0.43], levels)).toMatch(/^Hang none of these: even 50 g/);
});
