import { Button } from 'react-aria-components';
import { guideName } from '../../../engine/kinds/guides.ts';
import { listMarks } from '../../../engine/marks/marks-list.ts';
import { readDelivered } from '../../../record/read-delivered.ts';
import { shortNumber } from '../../../record/short-number.ts';
import { customerPage } from '../../../sheets/customer-page.ts';
import { customerRod } from '../../../sheets/customer-rod.ts';
import { dayWords } from '../../../words/intl.ts';
import { ladderWriter } from '../../../words/ladder-writer.ts';
import { fileName, handOver } from '../../parts/sheet/hand-over.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { ownMarks, useSheetModel } from '../../read/use-rod-sheet.ts';
import { useLadder } from '../../worker/use-ladder.ts';

/** The finished rod as one file to send its customer; with its bend once the guides are marked. */
export function CustomerPageButton() {
  const { id, title, document } = useBuild();
  const { writer, value } = useShop();
  const { blank, stiffness } = useBench();
  const model = ownMarks(useSheetModel());
  const { answer, working } = useLadder(
    model && model.loads.ladder.length > 0 ? model.ladder : undefined,
    model?.field.fromTipM ?? [],
  );
  const save = () => {
    if (!blank) return;
    const shopName = value(['rates', '-', 'shopName']);
    const { deliveredAt, ...said } = readDelivered(document);
    const named = model?.choices.guides.map(({ kind, size }, k) => ({
      name: guideName({ kind, size }),
      fromTipM: model.field.fromTipM[k],
      footM: model.field.footM[k],
    }));
    const rod = {
      ...said,
      title,
      number: shortNumber(id),
      shop: typeof shopName === 'string' ? shopName : '',
      date: dayWords(deliveredAt ?? new Date().toISOString()),
      blank,
      marks: model && named && listMarks(blank, named, model.choices.tapeStep, model),
      loads: model ? (answer?.reading.loads ?? []) : [],
      handleM: model?.handle.gripFrontFromButtM ?? 0,
      measured: stiffness.solved !== undefined,
    };
    const page = customerPage(customerRod(rod, ladderWriter(writer, model?.loads.kg ?? [])));
    handOver(page, 'text/html;charset=utf-8', `${fileName(title)}-rod.html`);
  };
  return (
    <Button className="button" isDisabled={!blank || working} onPress={save}>
      Page for the customer
    </Button>
  );
}
