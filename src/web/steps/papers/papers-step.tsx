import { useMemo } from 'react';
import { readFinish } from '../../../record/read-finish.ts';
import { BuildFields } from '../../fields/build-fields.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';
import { DeliveryPart } from './delivery-part.tsx';
import { InspectionPart } from './inspection-part.tsx';
import { LabelsPart } from './labels-part.tsx';
import { nextOnPapers } from './next-on-papers.ts';
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
  const { filled } = useBench();
  const finish = useMemo(() => readFinish(filled), [filled]);
  const next = nextOnPapers({
    title: textOf(single('about'), 'title'),
    isFinished: finish.coats.length >= finish.coatsInAll,
    parts: rows('quoteLines'),
    acceptedAt: textOf(single('quote'), 'acceptedAt'),
    inspection: rows('inspection'),
    papersPrinted: rows('prints').some((row) => textOf(row, 'sheet') === 'delivery'),
    deliveredAt: textOf(single('delivery'), 'deliveredAt'),
  });
  return <NextLine at={next.at}>{next.words}</NextLine>;
}

/** The parts of a long sheet, to go to at once. */
function PartsList({ parts }: { parts: readonly { anchor: string; name: string }[] }) {
  return (
    <nav className="parts-list screen-only" aria-label="Parts of this sheet">
      {parts.map(({ anchor, name }) => (
        <a key={anchor} href={`#${anchor}`}>
          {name}
        </a>
      ))}
    </nav>
  );
}
