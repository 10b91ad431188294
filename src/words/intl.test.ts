import { expect, test } from 'vitest';
import { clockWords, dayWords, englishOf, sinceWords } from './intl.ts';

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

test('what came due is said by since when; by its day where that is no longer this week', () => {
  const [now, hourMs] = [Date.UTC(2026, 10, 30, 12), 3_600_000];
  expect(sinceWords(now - hourMs, now)).toBe(`since ${clockWords(now - hourMs, now)}`);
  expect(sinceWords(now + hourMs, now)).toBe(clockWords(now + hourMs, now));
  expect(clockWords(now + hourMs, now)).toMatch(/Mon/);
  expect(sinceWords(now - 200 * hourMs, now)).toBe(`since ${dayWords(now - 200 * hourMs)}`);
  expect(clockWords(now + 200 * hourMs, now)).toContain('2026');
});
