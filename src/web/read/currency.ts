import type { Currency } from '../../engine/quote/money.ts';

const commonCurrency = 'EUR';

/** Its places as ISO 4217 has them, and how it is written; a code nobody knows has two. Euro until one is chosen. */
export function currencyOf(chosen: string | undefined): Currency {
  const code = chosen && /^[A-Z]{3}$/.test(chosen) ? chosen : commonCurrency;
  const written = (currencyDisplay: 'symbol' | 'narrowSymbol') =>
    new Intl.NumberFormat('en', { style: 'currency', currency: code, currencyDisplay });
  const symbols = [written('symbol'), written('narrowSymbol')].flatMap((format) =>
    format.formatToParts(0).flatMap(({ type, value }) => (type === 'currency' ? [value] : [])),
  );
  const digits = written('symbol').resolvedOptions().maximumFractionDigits ?? 2;
  return { code, digits, symbols: [...new Set(symbols)] };
}

/** Every currency of this browser, by its code. */
export function currencyCodes(): string[] {
  return Intl.supportedValuesOf('currency');
}
