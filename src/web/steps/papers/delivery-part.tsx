import { Button } from 'react-aria-components';
import { formatLength } from '../../../engine/units/format-quantity.ts';
import { deliverySheets } from '../../../sheets/delivery-sheets.ts';
import { cautions } from '../../../words/care.ts';
import { Field } from '../../fields/field.tsx';
import { dayWords } from '../../fields/moment-field.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { usePrint } from '../../parts/sheet/use-print.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';

/** Label, care sheet and inspection list on paper, and who took the rod. */
export function DeliveryPart() {
  const { rows, single, title } = useBuild();
  const { paper, system, value } = useShop();
  const { blank } = useBench();
  const { print, printing } = usePrint();
  const pdf = () => {
    const about = single('about');
    const shopName = value(['rates', '-', 'shopName']);
    const facts = [
      blank &&
        formatLength(blank.lengthM, { system, denominator: 8, decimals: 0, feet: true }).replaceAll('⁄', '/'),
      blank && `${blank.sections.length} ${blank.sections.length === 1 ? 'section' : 'sections'}`,
      textOf(about, 'lineWeight') && `line ${textOf(about, 'lineWeight')}`,
    ];
    const inspection = rows('inspection').map((row) => ({
      item: textOf(row, 'item') ?? '',
      tolerance: textOf(row, 'tolerance') ?? '',
      found: textOf(row, 'found') ?? '',
      verdict: textOf(row, 'verdict') ?? '',
    }));
    const parts = rows('parts').map((row) => ({
      what: textOf(row, 'what') ?? '',
      lot: textOf(row, 'lot') ?? '',
      dye: textOf(row, 'dye') ?? '',
    }));
    const rod = {
      title,
      customer: textOf(about, 'customer') ?? '',
      shop: typeof shopName === 'string' ? shopName : '',
      facts: facts.filter(Boolean).join(', '),
      date: dayWords(textOf(single('delivery'), 'deliveredAt') ?? new Date().toISOString()),
    };
    print({
      sheet: 'delivery',
      paper,
      draw: (stamp) => {
        const revision = /revision (\w+)/.exec(stamp)?.[1] ?? '';
        return deliverySheets({ ...rod, revision }, inspection, parts, paper);
      },
    });
  };
  return (
    <Part
      anchor="delivery"
      folded
      holds={['delivery/']}
      title="Delivery"
      tools={
        <Button className="button" isDisabled={printing} onPress={pdf}>
          Delivery papers as PDF
        </Button>
      }
    >
      <div className="fields-row">
        <Field path={['delivery', '-', 'deliveredTo']} />
        <Field path={['delivery', '-', 'deliveredAt']} />
      </div>
      <Field path={['delivery', '-', 'careSheetGiven']} />
      <Field path={['delivery', '-', 'note']} />
      {cautions.slice(0, 2).map(({ title: name, words, source }) => (
        <Caution key={name} about={`care-${name}`} brief={`${name}.`} source={source}>
          {words}
        </Caution>
      ))}
    </Part>
  );
}
