/** Days and moments as people type them, by the order that this device writes them in. */

/** Which of `day`, `month`, `year` comes first, second, third. */
export type DayOrder = readonly ('day' | 'month' | 'year')[];

/** The calendar and the digits that a typed day is read in, whatever the device's own. */
export const typable = { calendar: 'gregory', numberingSystem: 'latn' } as const;

export function dayOrderOf(locale?: string): DayOrder {
  const parts = new Intl.DateTimeFormat(locale, typable).formatToParts(new Date(2026, 10, 22));
  return parts.flatMap(({ type }) => (type === 'day' || type === 'month' || type === 'year' ? [type] : []));
}

/** Local time; a day alone is its midnight. Undefined where no such day is. */
export function readMoment(typed: string, order: DayOrder, now: Date): Date | undefined {
  const text = typed.trim().toLowerCase();
  if (text === 'now') return now;
  if (text === 'today') return new Date(now.getFullYear(), now.getMonth(), now.getDate());
  const numbers = (text.match(/\d+/g) ?? []).map(Number);
  // a year in front is the same everywhere: 2026-12-01
  const inOrder: DayOrder = /^\d{4}\D/.test(text) ? ['year', 'month', 'day'] : order;
  const said = inOrder.filter((part) => part !== 'year' || hasYear(text, numbers));
  const of = (part: DayOrder[number]) => numbers[said.indexOf(part)];
  const year = said.includes('year') ? fullYear(of('year')) : now.getFullYear();
  const [hour = 0, minute = 0] = hoursOf(text, numbers.slice(said.length));
  const [month, day] = [of('month'), of('day')];
  const at = new Date(year, month - 1, day, hour, minute);
  const isThere = at.getMonth() === month - 1 && at.getDate() === day && hour < 24 && minute < 60;
  return isThere && numbers.length <= said.length + 2 ? at : undefined;
}

/** Without a year there is a day and a month only, and perhaps a time behind them. */
function hasYear(text: string, numbers: readonly number[]): boolean {
  return numbers.length === 3 || numbers.length > 4 || /\d{4}/.test(text);
}

const fullYear = (year: number) => (year < 100 ? 2000 + year : year);

function hoursOf(text: string, [hour, minute]: readonly number[]): (number | undefined)[] {
  if (hour === undefined || !/[ap]\.?m/.test(text)) return [hour, minute];
  return [(hour % 12) + (/p\.?m/.test(text) ? 12 : 0), minute];
}

/** Written so that it can be read back: `12/01/2026`, `01.12.2026, 14:30`. */
export function momentText(at: Date, withTime: boolean, locale?: string): string {
  const time = withTime ? ({ hour: '2-digit', minute: '2-digit', hourCycle: 'h23' } as const) : {};
  return at.toLocaleString(locale, {
    ...typable,
    year: 'numeric',
    month: '2-digit',
    day: '2-digit',
    ...time,
  });
}
