import { batchParts, wasteWords } from '../../../words/batch.ts';
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
  const { batch, firstCoatMl, laterCoatMl, potLifeMin, roomC, mix } = finish;
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
              The first coat takes {firstCoatMl.toFixed(1)} ml on the rod, a later one{' '}
              {laterCoatMl.toFixed(1)} ml. {wasteWords(batch, firstCoatMl, mix.rules.ratioErrorPercent)} Brush{' '}
              {batch.batches > 1 ? 'a batch' : 'it'} within{' '}
              {writer.duration((potLifeMin * 60 * mix.rules.brushedPercent) / 100)} of its{' '}
              {writer.duration(potLifeMin * 60)} at {writer.temperature(roomC)}
              {batch.batches > 1
                ? ', too short for every wrap of a coat: mix the next one when the first is brushed out.'
                : '.'}
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
