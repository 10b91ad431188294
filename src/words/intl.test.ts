import { expect, test } from 'vitest';
import { dayWords, englishOf } from './intl.ts';

test('dates stand in the sentences’ English, in the device’s own where it has one', () => {
  expect(englishOf('en-US')).toBe('en-US');
  const friday = (locale: string) =>
    new Intl.DateTimeFormat(englishOf(locale), {
      weekday: 'short',
      hour: '2-digit',
      minute: '2-digit',
    }).format(new Date(2026, 4, 1, 14, 20));
  for (const locale of ['de-DE', 'ja-JP', 'ar-EG', 'fr-FR']) expect(friday(locale)).toBe('Fri 14:20');
});

test('no day is no words', () => {
  expect(dayWords(undefined)).toBe('');
  expect(dayWords('2026-11-30T12:00:00Z')).toContain('2026');
});
