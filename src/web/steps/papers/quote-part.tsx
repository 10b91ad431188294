import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { sumMinutes } from '../../../engine/plan/bench-list.ts';
import { commonHours } from '../../../engine/quote/quote.ts';
import { quoteRates } from '../../../record/fields/delivered.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { quoteSheet } from '../../../sheets/quote-sheet.ts';
import { dayWords, writeMoney } from '../../../words/intl.ts';
import { workWords } from '../../../words/quote-work.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useBuild } from '../../read/build-context.ts';
import { useCurrency, useShop } from '../../read/shop.tsx';
import { numberOf, textOf } from '../../read/values.ts';
import { QuoteSums } from './quote-sums.tsx';
import { RowsTable } from './rows-table.tsx';
import { useQuote } from './use-quote.ts';

const workStages = Object.keys(commonHours) as (keyof typeof commonHours)[];

/** Hours, rates and the one page the customer signs. */
export function QuotePart() {
  const { rows, write, newRowId } = useBuild();
  const currency = useCurrency();
  const { quote, unpriced } = useQuote();
  const hours = rows('quoteHours');
  const logged = sumMinutes(
    rows('hours').map((row) => ({
      stage: textOf(row, 'stage') ?? '',
      minutes: numberOf(row, 'minutes') ?? 0,
    })),
  ).totalMinutes;
  const takeCommon = () =>
    write(
      'quoteHours',
      workStages.flatMap((stage, i): Change[] => {
        const id = newRowId();
        return rowChanges('quoteHours', id, {
          order: hours.length + i,
          stage: workWords[stage],
          hours: commonHours[stage],
        });
      }),
    );
  const addHours = () =>
    write('addHours', [{ path: ['quoteHours', newRowId(), 'order'], value: hours.length }]);
  const { pdf, printing } = useQuotePaper();
  return (
    <Part
      anchor="quote"
      title="Quote"
      aside={quote.total > 0 ? `to pay ${writeMoney(quote.total, currency)}` : undefined}
      tools={
        <Button className="button" isDisabled={printing || quote.total === 0} onPress={pdf}>
          Quote as PDF
        </Button>
      }
    >
      <Field path={['quote', '-', 'wish']} />
      {hours.length > 0 && (
        <RowsTable
          label="Hours"
          collection="quoteHours"
          rows={hours}
          columns={[
            { field: 'stage', head: 'Work', label: (n) => `Work ${n}`, folds: true },
            { field: 'hours', head: 'Hours', label: (n) => `Hours of work ${n}` },
          ]}
          strike={{ deed: 'removeHours', thing: (n) => `work ${n}` }}
        />
      )}
      <div className="print-line">
        {hours.length === 0 && (
          <Button className="button" onPress={takeCommon}>
            Begin with common hours
          </Button>
        )}
        <Button className="button" onPress={addHours}>
          Add work
        </Button>
        {logged > 0 && (
          <span className="quiet">{Number((logged / 60).toFixed(2))} h are logged on this build.</span>
        )}
      </div>
      <FieldsRow of="quote" names={Object.keys(quoteRates)} />
      <QuoteSums quote={quote} unpriced={unpriced} currency={currency} />
      <div className="fields-row">
        <Field path={['quote', '-', 'quotedAt']} />
        <Field path={['quote', '-', 'acceptedAt']} />
        <Field path={['quote', '-', 'depositPaidAt']} />
      </div>
      <p className="small quiet">
        The shop’s rates, name and terms are in <Link href="/settings">Settings</Link>. What you type here is
        for this build alone.
      </p>
    </Part>
  );
}

/** The one page the customer signs; it is dated when it is first printed. */
function useQuotePaper() {
  const { single, title, write } = useBuild();
  const { paper, value } = useShop();
  const currency = useCurrency();
  const { quote, rate } = useQuote();
  const { print, printing } = usePrint();
  const pdf = () => {
    const own = single('quote');
    const quotedAt = textOf(own, 'quotedAt') ?? new Date().toISOString();
    const until = new Date(Date.parse(quotedAt) + rate('validDays') * 86_400_000).toISOString();
    const shopText = (field: string) => {
      const stored = value(['rates', '-', field]);
      return typeof stored === 'string' ? stored : '';
    };
    if (!textOf(own, 'quotedAt')) write('quote', [{ path: ['quote', '-', 'quotedAt'], value: quotedAt }]);
    print({
      sheet: 'quote',
      paper,
      draw: () => [
        quoteSheet(
          {
            shop: shopText('shopName'),
            address: shopText('shopAddress'),
            title,
            customer: textOf(single('about'), 'customer') ?? '',
            wish: textOf(own, 'wish') ?? '',
            quote,
            currency,
            taxPercent: rate('taxPercent'),
            date: dayWords(quotedAt),
            validUntil: dayWords(until),
            delivery: rate('leadWeeks') > 0 ? `in about ${rate('leadWeeks')} weeks from the deposit` : '',
            terms: shopText('terms'),
          },
          { paper },
        ),
      ],
    });
  };
  return { pdf, printing };
}
