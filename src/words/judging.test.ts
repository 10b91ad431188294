import { expect, test } from 'vitest';
import { agreedInWords } from './judging.ts';

test('one place is not counted, several are', () => {
  expect(agreedInWords({ agreed: 1, counted: 1 })).toBe('The one place seen was where it was predicted');
  expect(agreedInWords({ agreed: 0, counted: 1 })).toContain('was not where');
  expect(agreedInWords({ agreed: 1, counted: 2 })).toMatch(/^1 of 2 places/);
});
