import { useMemo } from 'react';
import { makeQuote, type Quote } from '../../../engine/quote/quote.ts';
import { quoteRates } from '../../../record/fields/delivered.ts';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { numberOf, textOf } from '../../read/values.ts';

export type RateName = keyof typeof quoteRates;

export interface QuoteOnBuild {
  quote: Quote;
  rate(name: RateName): number;
  /** What the sums do not hold yet: parts that have no price, hours while no rate is given. */
  unpriced: { parts: number; hours: number };
}

/** The quote as lines, hours and rates leave it. */
export function useQuote(): QuoteOnBuild {
  const { rows, single } = useBuild();
  const { value } = useShop();
  return useMemo(() => {
    const own = single('quote');
    const rate = (name: RateName): number => {
      const shop = value(['rates', '-', name]);
      return numberOf(own, name) ?? (typeof shop === 'number' ? shop : Number(quoteRates[name].usual ?? 0));
    };
    const hasRate = [numberOf(own, 'hourlyRate'), value(['rates', '-', 'hourlyRate'])].some(
      (one) => typeof one === 'number',
    );
    const quote = makeQuote({
      lines: rows('quoteLines').map((row) => ({
        what: textOf(row, 'what') ?? '',
        count: numberOf(row, 'count') ?? 0,
        unitPrice: numberOf(row, 'unitPrice') ?? 0,
        spare: numberOf(row, 'spare') ?? 0,
        source: textOf(row, 'source'),
      })),
      hours: rows('quoteHours').map((row) => ({
        stage: textOf(row, 'stage') ?? '',
        hours: numberOf(row, 'hours') ?? 0,
      })),
      hourlyRate: rate('hourlyRate'),
      overheadPercent: rate('overheadPercent'),
      reservePercent: rate('reservePercent'),
      depositPercent: rate('depositPercent'),
      taxPercent: rate('taxPercent'),
    });
    const unpriced = {
      parts: rows('quoteLines').filter(
        (row) => numberOf(row, 'count') !== 0 && numberOf(row, 'unitPrice') === undefined,
      ).length,
      hours: hasRate ? 0 : quote.hoursInAll,
    };
    return { quote, rate, unpriced };
  }, [rows, single, value]);
}
