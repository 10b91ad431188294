import type { Currency } from '../../../engine/quote/money.ts';
import type { Quote } from '../../../engine/quote/quote.ts';
import { writeMoney } from '../../../words/intl.ts';
import { Table } from '../../parts/sheet/table.tsx';
import type { QuoteOnBuild } from './use-quote.ts';

export interface QuoteSumsProps {
  quote: Quote;
  unpriced: QuoteOnBuild['unpriced'];
  currency: Currency;
}

/** How the price comes about, and what is not in it yet: no price is no gift. */
export function QuoteSums({ quote, unpriced, currency }: QuoteSumsProps) {
  const missing = missingWords(unpriced);
  if (quote.total === 0 && (missing || quote.lines.length === 0)) {
    return (
      <p className="quiet">
        The price shows here once {missing ? `${missing}.` : 'there are parts or hours.'}
      </p>
    );
  }
  const all: [name: string, amount: number][] = [
    ['Parts', quote.parts],
    [`Work, ${quote.hoursInAll} h`, quote.labour],
    ['Overheads', quote.overheads],
    ['Reserve', quote.reserve],
    ['Tax', quote.tax],
    ['To pay', quote.total],
    ['Of it as a deposit', quote.deposit],
  ];
  // Hours without a rate, and what is not charged, are no price of 0.
  const rows = all.filter(([name, amount]) => amount !== 0 || name === 'To pay');
  return (
    <>
      {missing && <p className="attention">▲ Price not complete: it will be once {missing}.</p>}
      <Table
        label="How the price comes about"
        heads={['The price', 'Amount']}
        rows={rows.map(([name, amount]) => [
          { of: name === 'To pay' ? <strong>{name}</strong> : name },
          { of: writeMoney(amount, currency), className: 'papers-amount' },
        ])}
      />
    </>
  );
}

/** `14 parts and an hour of the 9.5 h have a price`; empty where nothing is missing. */
function missingWords({ parts, hours }: QuoteSumsProps['unpriced']): string {
  const missing = [
    parts > 0 && (parts === 1 ? 'the last part' : `${parts} parts`),
    hours > 0 && `an hour of the ${hours} h`,
  ].filter(Boolean);
  if (missing.length === 0) return '';
  return `${missing.join(' and ')} ${missing.length === 1 && parts <= 1 ? 'has' : 'have'} a price`;
}
