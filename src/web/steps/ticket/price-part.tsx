import { useState } from 'react';
import { Button } from 'react-aria-components';
import { ticketLabel } from '../../../sheets/ticket-label.ts';
import { writeMoney } from '../../../words/intl.ts';
import { DayField, dayWords } from '../../fields/day-field.tsx';
import { MoneyField } from '../../fields/money-field.tsx';
import { fileName, handOver } from '../../parts/sheet/hand-over.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { reasonOf } from '../../read/open-store.ts';
import { useShop } from '../../read/shop.tsx';
import { useCurrency } from '../../read/use-currency.ts';
import { numberOf, textOf } from '../../read/values.ts';
import { brokenThings } from './came-in-part.tsx';
import { ticketNumber } from './ticket-number.ts';

/** What it costs, when it is promised, and the label that goes on the rod. */
export function PricePart() {
  const { print, printing } = useLabel();
  return (
    <Part
      title="Price and promise"
      tools={
        <Button className="button" isDisabled={printing} onPress={print}>
          Label as PDF
        </Button>
      }
    >
      <div className="fields-row">
        <MoneyField label="Price" path={['job', '-', 'price']} />
        <DayField label="Promised for" path={['job', '-', 'promisedFor']} />
      </div>
    </Part>
  );
}

function useLabel() {
  const { id, title, single } = useBuild();
  const { paper, value } = useShop();
  const currency = useCurrency();
  const say = useSay();
  const [printing, setPrinting] = useState(false);
  const print = async () => {
    setPrinting(true);
    try {
      const { sheetsPdf } = await import('../../../paper/index.ts');
      const [about, job] = [single('about'), single('job')];
      const price = numberOf(job, 'price');
      const shopName = value(['rates', '-', 'shopName']);
      const sheet = ticketLabel(
        {
          number: ticketNumber(id),
          rod: title,
          customer: textOf(about, 'customer') ?? '',
          contact: textOf(about, 'contact') ?? '',
          broken:
            brokenThings.find((one) => one.value !== '' && one.value === textOf(job, 'broken'))?.name ?? '',
          promised: dayWords(textOf(job, 'promisedFor')),
          price: price === undefined ? '' : writeMoney(price, currency),
          shop: typeof shopName === 'string' ? shopName : '',
        },
        paper,
      );
      const bytes = await sheetsPdf([sheet], { title: `Repair ${ticketNumber(id)}`, printedAt: new Date() });
      handOver(bytes, 'application/pdf', `repair-${ticketNumber(id)}-${fileName(title)}.pdf`);
    } catch (error) {
      say(`No label was made: ${reasonOf(error)}.`);
    } finally {
      setPrinting(false);
    }
  };
  return { print, printing };
}
