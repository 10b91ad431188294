/** Dates by the device's own habits; money the same on screen and paper. */
import { type Currency, plainMoney } from '../engine/quote/money.ts';

const instants = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium', timeStyle: 'short' });
const days = new Intl.DateTimeFormat(undefined, { dateStyle: 'medium' });
const clocks = new Intl.DateTimeFormat(undefined, { weekday: 'short', hour: '2-digit', minute: '2-digit' });

/** `4 May 2026, 14:20`. */
export function instantWords(instant: string | number): string {
  return instants.format(new Date(instant));
}

/** `4 May 2026`. */
export function dayWords(instant: string | number): string {
  return days.format(new Date(instant));
}

/** `Tue 14:20`. */
export function clockWords(atMs: number): string {
  return clocks.format(new Date(atMs));
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
