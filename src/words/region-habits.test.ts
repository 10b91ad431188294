import { expect, test } from 'vitest';
import { currencyOfRegion, habitsOfLanguages } from './region-habits.ts';

/** Currencies by ISO 4217, measures and paper by Unicode CLDR 47; the rows are written from those, not from the code. */
test.each([
  ['de', 'mm', 'a4', 'EUR'],
  ['de-CH', 'mm', 'a4', 'CHF'],
  ['fr-FR', 'mm', 'a4', 'EUR'],
  ['fr-CA', 'mm', 'letter', 'CAD'],
  ['ja', 'mm', 'a4', 'JPY'],
  ['en-US', 'inch', 'letter', 'USD'],
  ['en', 'inch', 'letter', 'USD'],
  ['en-GB', 'inch', 'a4', 'GBP'],
  ['sv', 'mm', 'a4', 'SEK'],
  ['pl-PL', 'mm', 'a4', 'PLN'],
  ['es-MX', 'mm', 'letter', 'MXN'],
  ['en-AU', 'mm', 'a4', 'AUD'],
] as const)('a browser in %s starts in %s on %s with %s', (language, unitSystem, paper, currency) => {
  expect(habitsOfLanguages([language])).toEqual({ unitSystem, paper, currency });
});

test('what is no language tag is passed over; the first that is one counts', () => {
  expect(habitsOfLanguages(['C', '??', 'ja-JP', 'en-US']).currency).toBe('JPY');
  expect(habitsOfLanguages([])).toEqual({ unitSystem: 'inch', paper: 'letter', currency: 'USD' });
});

test('every currency named is one that Intl knows', () => {
  const known = new Set(Intl.supportedValuesOf('currency'));
  const letters = [...'ABCDEFGHIJKLMNOPQRSTUVWXYZ'];
  const named = letters.flatMap((a) => letters.map((b) => currencyOfRegion(a + b)));
  const codes = [...new Set(named.filter((code) => code !== undefined))];
  expect(codes.length).toBeGreaterThan(140);
  expect(codes.filter((code) => !known.has(code))).toEqual([]);
});
