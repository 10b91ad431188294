import { deliverySheets } from '../../../sheets/delivery-sheets.ts';
import { cautions } from '../../../words/care.ts';
import { inspectionInWords } from '../../../words/inspection.ts';
import { Field } from '../../fields/field.tsx';
import { Caution } from '../../parts/cautions/caution.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { type Paper, useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import { CustomerPageButton } from './customer-page-button.tsx';
import { useDeliveredRod } from './use-delivered-rod.ts';

/** Label, care sheet and inspection list on paper, and who took the rod. */
export function DeliveryPart() {
  const { rows } = useBuild();
  const { writer } = useShop();
  const { blank } = useBench();
  const rodNow = useDeliveredRod();
  const draw = ({ paper, stamp }: { paper: Paper; stamp: string }) => {
    const inspection = rows('inspection').map((row) => {
      const usual = inspectionInWords(textOf(row, 'point'), { lengthM: blank?.lengthM }, writer);
      return {
        item: textOf(row, 'item') ?? usual?.item ?? '',
        tolerance: textOf(row, 'tolerance') ?? usual?.tolerance ?? '',
        found: textOf(row, 'found') ?? '',
        verdict: textOf(row, 'verdict') ?? '',
      };
    });
    const parts = rows('parts').map((row) => ({
      what: textOf(row, 'what') ?? '',
      lot: textOf(row, 'lot') ?? '',
      dye: textOf(row, 'dye') ?? '',
    }));
    const revision = /revision (\w+)/.exec(stamp)?.[1] ?? '';
    return deliverySheets({ ...rodNow(), revision }, inspection, parts, paper);
  };
  return (
    <Part
      anchor="delivery"
      folded
      holds={['delivery/', 'about/-/title']}
      title="Delivery"
      tools={
        <>
          <PrintButton sheet="delivery" draw={draw}>
            Delivery papers as PDF
          </PrintButton>
          <CustomerPageButton />
        </>
      }
    >
      <div className="fields-row">
        <Field path={['about', '-', 'title']} />
        <Field path={['delivery', '-', 'deliveredTo']} />
        <Field path={['delivery', '-', 'deliveredAt']} />
      </div>
      <Field path={['delivery', '-', 'careSheetGiven']} />
      <Field path={['delivery', '-', 'note']} />
      <div className="cautions">
        {cautions.slice(0, 2).map(({ title: name, words, source }) => (
          <Caution key={name} about={`care-${name}`} brief={`${name}.`} source={source}>
            {words}
          </Caution>
        ))}
      </div>
    </Part>
  );
}
