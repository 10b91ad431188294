import { useId, useState } from 'react';
import { type LabelStock, type LabelStockId, labelStocks } from '../../../engine/delivery/label-stock.ts';
import { shortNumber } from '../../../record/short-number.ts';
import { labelSheet } from '../../../sheets/label-sheet.ts';
import { Field } from '../../fields/field.tsx';
import { ShopFields } from '../../fields/shop-fields.tsx';
import { usePrinterChoice } from '../../parts/printer-choice.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { PrintButton } from '../../parts/sheet/print-button.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { textOf } from '../../read/values.ts';
import { useDeliveredRod } from './use-delivered-rod.ts';

/** Labels with a code of the build's number, on a bought sheet that may be begun. */
export function LabelsPart() {
  const { id } = useBuild();
  const { settings, paper } = useShop();
  const usual: LabelStockId = paper === 'a4' ? 'a4-21' : 'letter-30';
  const stock: LabelStock =
    labelStocks[(textOf(settings, 'labels') ?? usual) as LabelStockId] ?? labelStocks[usual];
  const many = stock.across * stock.down;
  const [chosenFree, setFirstFree] = useState(1);
  const [count, setCount] = useState(2);
  const firstFree = Math.min(chosenFree, many);
  const rodNow = useDeliveredRod();
  const { factors } = usePrinterChoice(stock.paper);
  const draw = () => {
    const { title, facts, customer, shop, date } = rodNow();
    const lines = [title, facts, customer && `for ${customer}`, shop, date];
    const label = { number: shortNumber(id), lines };
    return [labelSheet(label, { stock, firstFree, count, factors })];
  };
  return (
    <Part
      anchor="labels"
      folded
      holds={['settings/-/labels']}
      title="Labels"
      aside={`number ${shortNumber(id)}`}
    >
      <div className="labels-line">
        <div className="labels-choices">
          <ShopFields>
            <Field path={['settings', '-', 'labels']} usual={usual} />
          </ShopFields>
          <PickNumber label="First free place" most={many} value={firstFree} change={setFirstFree} />
          <PickNumber label="How many" most={many} value={Math.min(count, many)} change={setCount} />
          <PrintButton sheet="labels" paper={stock.paper} draw={draw}>
            Labels as PDF
          </PrintButton>
          <p className="quiet small">
            The code holds the number. Scan it into the shelf’s “Find”, and the build is there.
          </p>
        </div>
        <SheetOfLabels stock={stock} firstFree={firstFree} count={count} choose={setFirstFree} />
      </div>
    </Part>
  );
}

interface PickNumberProps {
  label: string;
  most: number;
  value: number;
  change(value: number): void;
}

function PickNumber({ label, most, value, change }: PickNumberProps) {
  const id = useId();
  return (
    <label className="field" htmlFor={id}>
      <span className="field-label">{label}</span>
      <select
        id={id}
        className="field-input"
        value={value}
        onChange={(event) => change(Number(event.target.value))}
      >
        {Array.from({ length: most }, (_, k) => (
          <option key={k + 1}>{k + 1}</option>
        ))}
      </select>
    </label>
  );
}

interface SheetOfLabelsProps {
  stock: LabelStock;
  firstFree: number;
  count: number;
  choose(place: number): void;
}

/** The sheet as it goes in: used places struck, those to be printed filled. A tap says which is the first free one. */
function SheetOfLabels({
  stock: { across, down, widthM, heightM },
  firstFree,
  count,
  choose,
}: SheetOfLabelsProps) {
  const [widthMm, heightMm] = [widthM * 1000, heightM * 1000];
  const words = `${across * down} places; ${Math.min(count, across * down - firstFree + 1)} printed from place ${firstFree} on`;
  return (
    // Pointer only: the list beside it says the same to the keys.
    <svg
      className="labels-sheet"
      viewBox={`0 0 ${across * widthMm} ${down * heightMm}`}
      role="img"
      aria-label={words}
    >
      {Array.from({ length: across * down }, (_, k) => (
        <rect
          key={k + 1}
          className={labelClass(k + 1, firstFree, count)}
          x={(k % across) * widthMm + 1.5}
          y={Math.floor(k / across) * heightMm + 1.5}
          width={widthMm - 3}
          height={heightMm - 3}
          onPointerDown={() => choose(k + 1)}
        />
      ))}
    </svg>
  );
}

function labelClass(place: number, firstFree: number, count: number): string {
  if (place < firstFree) return 'label-used';
  return place < firstFree + count ? 'label-printed' : 'label-free';
}
