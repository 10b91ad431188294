import { useMemo } from 'react';
import type { Currency } from '../../engine/quote/money.ts';
import { useShop } from './shop.tsx';

/** The currency the shop reckons in; euro until it chose one. */
export function useCurrency(): Currency {
  const code = useShop().value(['rates', '-', 'currency']);
  return useMemo(() => currencyOf(typeof code === 'string' ? code : commonCurrency), [code]);
}

const commonCurrency = 'EUR';

/** Its places as ISO 4217 has them; a code nobody knows has two. */
export function currencyOf(code: string): Currency {
  const known = /^[A-Z]{3}$/.test(code) ? code : commonCurrency;
  const { maximumFractionDigits } = new Intl.NumberFormat('en', {
    style: 'currency',
    currency: known,
  }).resolvedOptions();
  return { code: known, digits: maximumFractionDigits ?? 2 };
}

/** Every currency of this browser, by its code. */
export function currencyCodes(): string[] {
  return Intl.supportedValuesOf('currency');
}
