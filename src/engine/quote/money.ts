/**
 * Money counts the currency's smallest unit in whole numbers, so that sums are exact. Shares of it are rounded half
 * up, away from zero, once each, where they are written down.
 */
export interface Currency {
  /** ISO 4217, three capital letters. */
  code: string;
  /** Places behind the point: 2 for most, 0 and 3 for some. */
  digits: number;
  /** As it is written in front of an amount or behind it: `$`. */
  symbols?: readonly string[];
}

export function roundMoney(amount: number): number {
  return Math.sign(amount) * Math.floor(Math.abs(amount) + 0.5 + 1e-9);
}

export function percentOf(amount: number, percent: number): number {
  return roundMoney((amount * percent) / 100);
}

/** `1234.50`, without the currency and without grouping, as a spreadsheet reads it. */
export function plainMoney(amount: number, { digits }: Currency): string {
  const whole = Math.abs(Math.round(amount))
    .toString()
    .padStart(digits + 1, '0');
  const sign = amount < 0 ? '-' : '';
  if (digits === 0) return sign + whole;
  return `${sign}${whole.slice(0, -digits)}.${whole.slice(-digits)}`;
}

/**
 * `12`, `12.5`, `1,234.50`, `12,50`, with the currency's code or sign before or behind, as smallest units; undefined
 * where it is no such amount.
 */
export function readMoney(text: string, { code, digits, symbols = [] }: Currency): number | undefined {
  const sign = [code, ...symbols].find((one) => text.toUpperCase().includes(one.toUpperCase())) ?? code;
  const bare = text
    .toUpperCase()
    .replace(sign.toUpperCase(), '')
    .replace(/[\s\u00a0']/g, '');
  const separators = [...bare.matchAll(/[.,]/g)];
  const last = separators.at(-1)?.index;
  const isPoint =
    last !== undefined &&
    (separators.length === 1
      ? bare.length - last - 1 !== 3 || digits === 3
      : bare[last] !== separators[0][0]);
  const [whole, part] = isPoint ? [bare.slice(0, last), bare.slice(last + 1)] : [bare, ''];
  if (!/^(\d{0,12}|\d{1,3}([.,]\d{3}){1,3})$/.test(whole) || !/^\d*$/.test(part)) return undefined;
  const plain = whole.replace(/[.,]/g, '');
  if (plain + part === '' || part.length > digits) return undefined;
  return Number((plain || '0') + part.padEnd(digits, '0'));
}
