import { expect, test } from 'vitest';
import { lengthsInWords } from './lengths-in-words.ts';

const finding = 'the drop of 343 mm reads 25.4 mm more than the others allow, about 317 mm: an inch misread?';

test('in an inch shop every length of a finding is written as the tape reads', () => {
  expect(lengthsInWords(finding, 'inch')).toBe(
    'the drop of 13 1⁄2 in reads 1 in more than the others allow, about 12 1⁄2 in: an inch misread?',
  );
});

test('in a millimetre shop it stays, and so does what no tape shows', () => {
  expect(lengthsInWords(finding, 'mm')).toBe(finding);
  expect(lengthsInWords('off by 0.8 mm, weight 12 g, 1.25°', 'inch')).toBe(
    'off by 0.8 mm, weight 12 g, 1.25°',
  );
});
