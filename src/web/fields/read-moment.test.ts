import { expect, test } from 'vitest';
import { dayOrderOf, momentText, readMoment } from './read-moment.ts';

const now = new Date(2026, 10, 30, 9, 15);
const american = dayOrderOf('en-US');
const german = dayOrderOf('de-DE');

test.each([
  ['12/1/2026', american, new Date(2026, 11, 1)],
  ['1.12.2026', german, new Date(2026, 11, 1)],
  ['2026-12-01', american, new Date(2026, 11, 1)],
  ['2099-01-01T10:00', german, new Date(2099, 0, 1, 10)],
  ['12/1', american, new Date(2026, 11, 1)],
  ['1.12.', german, new Date(2026, 11, 1)],
  ['12/1/26 2:30 pm', american, new Date(2026, 11, 1, 14, 30)],
  ['today', german, new Date(2026, 10, 30)],
  ['now', american, now],
])('%s is read in the order of the device', (typed, order, at) => {
  expect(readMoment(typed, order, now)?.getTime()).toBe(at.getTime());
});

test.each(['13/40/2026', '31/2', 'soon', '12/1/2026 25:00', '1 2 3 4 5 6'])('%s is no day', (typed) => {
  expect(readMoment(typed, american, now)).toBeUndefined();
});

test.each(['en-US', 'de-DE', 'ja-JP', 'en-GB', 'sv-SE', 'th-TH', 'fa-IR', 'ar-EG'])(
  'what is written is read back the same in %s',
  (locale) => {
    const at = new Date(2026, 2, 4, 17, 5);
    expect(readMoment(momentText(at, true, locale), dayOrderOf(locale), now)?.getTime()).toBe(at.getTime());
  },
);
