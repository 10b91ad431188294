import { expect, test } from 'vitest';
import { resolutionWord } from './scan-resolution.ts';

test('a known guide finds a wrong resolution and says the right one', () => {
  // Scanned at 300 dpi, read as 600: a guide of 24 mm would be 12 mm long.
  expect(resolutionWord(600, undefined, { trueM: 0.024, readM: 0.0121 })).toEqual({
    ok: false,
    because: 'wrong',
    dpi: 300,
  });
  expect(resolutionWord(300, 600, { trueM: 0.024, readM: 0.0243 })).toEqual({ ok: true, because: 'known' });
});

test('without a known length only the file’s own word counts, and only when it is the one used', () => {
  expect(resolutionWord(600, 600, undefined)).toEqual({ ok: true, because: 'file' });
  expect(resolutionWord(600, 300, undefined)).toEqual({ ok: false, because: 'unknown' });
  expect(resolutionWord(600, undefined, undefined)).toEqual({ ok: false, because: 'unknown' });
});

test('a resolution no scanner has is taken as it comes out', () => {
  expect(resolutionWord(600, undefined, { trueM: 0.02, readM: 0.015 })).toEqual({
    ok: false,
    because: 'wrong',
    dpi: 450,
  });
});
