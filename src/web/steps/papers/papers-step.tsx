import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { PartsList } from '../../parts/sheet/parts-list.tsx';
import { useBuild } from '../../read/build-context.ts';
import { numberOf, textOf } from '../../read/values.ts';
import { DeliveryPart } from './delivery-part.tsx';
import { InspectionPart } from './inspection-part.tsx';
import { LabelsPart } from './labels-part.tsx';
import { OrderPart } from './order-part.tsx';
import { PartsUsedPart } from './parts-used-part.tsx';
import { QuotePart } from './quote-part.tsx';
import './papers.css';

const parts = [
  { anchor: 'order', name: 'Parts and order' },
  { anchor: 'quote', name: 'Quote' },
  { anchor: 'used', name: 'What it is made of' },
  { anchor: 'inspection', name: 'Inspection' },
  { anchor: 'delivery', name: 'Delivery' },
  { anchor: 'labels', name: 'Labels' },
];

/** Everything that is written for the customer and kept for the day he comes back. */
export function PapersStep() {
  return (
    <BuildFields>
      <WhatNext />
      <PartsList parts={parts} />
      <OrderPart />
      <QuotePart />
      <PartsUsedPart />
      <InspectionPart />
      <DeliveryPart />
      <LabelsPart />
    </BuildFields>
  );
}

function WhatNext() {
  const { single, rows } = useBuild();
  const [quote, delivery] = [single('quote'), single('delivery')];
  const looked = rows('inspection');
  const lines = rows('quoteLines').filter((row) => numberOf(row, 'count') !== 0);
  const unpriced = lines.filter((row) => numberOf(row, 'unitPrice') === undefined).length;
  const open = looked.find((row) => !textOf(row, 'verdict'));
  const failed = looked.find((row) => textOf(row, 'verdict') === 'not good');
  const bare = lines.find((row) => numberOf(row, 'unitPrice') === undefined);
  if (textOf(delivery, 'deliveredAt')) return <NextLine>Delivered; the record is kept.</NextLine>;
  if (failed)
    return (
      <NextLine at={`inspection/${failed.id}/found`}>Something failed. Fix it, and look again.</NextLine>
    );
  if (open)
    return <NextLine at={`inspection/${open.id}/found`}>Look at every point and give its verdict.</NextLine>;
  if (looked.length > 0) {
    return <NextLine at="delivery/-/deliveredTo">Print the delivery papers, and have them signed.</NextLine>;
  }
  if (textOf(quote, 'acceptedAt'))
    return <NextLine>Order the parts; note lot and dye numbers as they come in.</NextLine>;
  if (lines.length === 0) {
    return (
      <NextLine at="quoteLines/new">
        Take the parts from the build, put prices to them, and print the quote.
      </NextLine>
    );
  }
  if (bare) {
    return (
      <NextLine at={`quoteLines/${bare.id}/unitPrice`}>
        {`Put prices to the parts: ${unpriced} of ${lines.length} have none yet. Then print the quote.`}
      </NextLine>
    );
  }
  return <NextLine at="quote/-/quotedAt">Print the quote; when the customer agrees, note the day.</NextLine>;
}
