import { Button } from 'react-aria-components';
import { ticketSchema } from '../../../record/schema.ts';
import { shortNumber } from '../../../record/short-number.ts';
import { ticketLabel } from '../../../sheets/ticket-label.ts';
import { choiceText } from '../../../words/field-text.ts';
import { dayWords, writeMoney } from '../../../words/intl.ts';
import { Field } from '../../fields/field.tsx';
import { fileName, handOver } from '../../parts/sheet/hand-over.ts';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { useCurrency, useShop } from '../../read/shop.tsx';
import { useAttempt } from '../../read/use-attempt.ts';
import { numberOf, textOf } from '../../read/values.ts';

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
        <Field path={['job', '-', 'price']} />
        <Field path={['job', '-', 'promisedFor']} />
      </div>
    </Part>
  );
}

function useLabel() {
  const { id, title, single } = useBuild();
  const { paper, value } = useShop();
  const currency = useCurrency();
  const say = useSay();
  const { busy, attempt } = useAttempt();
  const print = () =>
    attempt('No label was made', async () => {
      const [{ sheetsPdf, missingWords }, { paperFonts }] = await Promise.all([
        import('../../../paper/index.ts'),
        import('../../parts/sheet/paper-fonts.ts'),
      ]);
      const [about, job] = [single('about'), single('job')];
      const price = numberOf(job, 'price');
      const shopName = value(['rates', '-', 'shopName']);
      const sheet = ticketLabel(
        {
          number: shortNumber(id),
          rod: title,
          customer: textOf(about, 'customer') ?? '',
          contact: textOf(about, 'contact') ?? '',
          broken: choiceText(ticketSchema.job.fields.broken, textOf(job, 'broken') ?? ''),
          promised: dayWords(textOf(job, 'promisedFor')),
          price: price === undefined ? '' : writeMoney(price, currency),
          shop: typeof shopName === 'string' ? shopName : '',
        },
        paper,
      );
      const { bytes, missing } = await sheetsPdf([sheet], {
        title: `Repair ${shortNumber(id)}`,
        printedAt: new Date(),
        fonts: paperFonts,
      });
      handOver(bytes, 'application/pdf', `repair-${shortNumber(id)}-${fileName(title)}.pdf`);
      if (missing.length > 0) say(missingWords(missing));
    });
  return { print, printing: busy };
}
