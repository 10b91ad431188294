/** Dates in the sentences' English, by the device's own habits where it has any in English; money the same on screen and paper. */
import { type Currency, plainMoney } from '../engine/quote/money.ts';

/** The device's own English; in another tongue the day first and 24 hours, as most of the world writes them. */
export const englishOf = (locale: string) => (/^en\b/.test(locale) ? locale : 'en-GB');
export const english = englishOf(new Intl.DateTimeFormat().resolvedOptions().locale);

const instants = new Intl.DateTimeFormat(english, { dateStyle: 'medium', timeStyle: 'short' });
const days = new Intl.DateTimeFormat(english, { dateStyle: 'medium' });
const clocks = new Intl.DateTimeFormat(english, { weekday: 'short', hour: '2-digit', minute: '2-digit' });

/** `4 May 2026, 14:20`. */
export function instantWords(instant: string | number): string {
  return instants.format(new Date(instant));
}

/** `4 May 2026`; empty for none. */
export function dayWords(instant: string | number | undefined): string {
  return instant === undefined ? '' : days.format(new Date(instant));
}

/** `Tue 14:20` within the week round now, else `4 May 2026`. */
export function clockWords(atMs: number, nowMs: number): string {
  return Math.abs(atMs - nowMs) < sixDaysMs ? clocks.format(new Date(atMs)) : dayWords(atMs);
}
const sixDaysMs = 6 * 24 * 3_600_000;

/** What came due is said by when it did: `since Tue 14:20`; what is to come by its hour alone. */
export function sinceWords(atMs: number, nowMs: number): string {
  return `${atMs <= nowMs ? 'since ' : ''}${clockWords(atMs, nowMs)}`;
}

/** `EUR 1,234.50`: the code first. Exact, whatever the sum: the digits go in as text. */
export function writeMoney(amount: number, currency: Currency): string {
  const format = new Intl.NumberFormat('en', {
    style: 'currency',
    currency: currency.code,
    currencyDisplay: 'code',
    minimumFractionDigits: currency.digits,
    maximumFractionDigits: currency.digits,
  });
  return format.format(plainMoney(amount, currency) as Intl.StringNumericLiteral);
}
