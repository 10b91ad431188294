import type { BatchPlan } from '../../../engine/finish/batches.ts';
import { batchParts, wasteWords } from '../../../words/batch.ts';
import type { Writer } from '../../../words/writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { CoatDetailFields, coatDetails, MixFields } from '../../parts/habits/habit-fields.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useShop } from '../../read/shop.tsx';
import type { FinishOnRod } from '../../read/use-finish.ts';
import { useSentence } from '../../read/use-sentence.ts';

/** How much one coat takes, and what to measure for it. */
export function MixPart({ finish }: { finish: FinishOnRod }) {
  const sentence = useSentence();
  const { writer } = useShop();
  const { batch, mix } = finish;
  return (
    <Part title="Mix" aside="from the wraps’ own geometry">
      <div role="status">
        {batch ? (
          <>
            <p className="mix-figure">
              {batchParts(batch)}
              {batch.batches > 1 && `, ${batch.batches} batches a coat`}
            </p>
            <p>
              <Figure text={mixWords(finish, batch, writer)} />
            </p>
          </>
        ) : finish.findings.length > 0 ? (
          <p className="attention">▲ {sentence(finish.findings[0])}</p>
        ) : (
          <p className="quiet">When the guides have their marks, the volume follows from the wraps.</p>
        )}
      </div>
      <MixFields mixBy={mix.mixBy} ratioBy={mix.ratioBy} />
      <Fold title="What this is worked out with" holds={coatDetails.map((name) => `finish/-/${name}`)}>
        <CoatDetailFields />
      </Fold>
    </Part>
  );
}

function mixWords(
  { firstCoatMl, laterCoatMl, potLifeMin, roomC, mix: { rules } }: FinishOnRod,
  batch: BatchPlan,
  writer: Writer,
): string {
  const takes = `The first coat takes ${firstCoatMl.toFixed(1)} ml on the rod, a later one ${laterCoatMl.toFixed(1)} ml.`;
  const within = writer.duration((potLifeMin * 60 * rules.brushedPercent) / 100);
  const potLife = `${writer.duration(potLifeMin * 60)} at ${writer.temperature(roomC)}`;
  const brush =
    batch.batches > 1
      ? `Brush a batch within ${within} of its ${potLife}. That is too short for every wrap of a coat: mix the next batch when the first is brushed out.`
      : `Brush it within ${within} of its ${potLife}.`;
  return [takes, wasteWords(batch, firstCoatMl, rules.ratioErrorPercent), brush].filter(Boolean).join(' ');
}
