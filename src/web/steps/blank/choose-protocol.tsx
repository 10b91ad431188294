import { useId, useState } from 'react';
import { Button } from 'react-aria-components';
import type { ProtocolKind } from '../../../engine/bench/protocol.ts';
import { formatGrams } from '../../../engine/units/format-quantity.ts';
import { readQuantity } from '../../../engine/units/read-quantity.ts';
import { readingEdges } from '../../../record/fields/readings.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { thirdLoadInWords } from '../../../words/line-load.ts';
import { FewChoices } from '../../fields/few-choices.tsx';
import { FieldLine } from '../../fields/field-line.tsx';
import { leadOn } from '../../fields/lead-on.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import { useSentence } from '../../read/use-sentence.ts';
import { newSpan } from './new-span.ts';
import { usePlanContext } from './plan-context.ts';
import { readingsAsked, restOfPlan } from './plan-rest.ts';
import type { Edge } from './plan-rows.ts';
import type { SetupRows } from './reading-rows.ts';
import { isSpared, notSparedWords, sparedWords } from './spared-words.ts';
import { useBeginStand } from './use-begin-stand.ts';
import type { Plan } from './use-plan.ts';

/** The ways to measure, with what each takes and gives; lays the rows out to be filled. */
export function ChooseProtocol({ standing }: { standing: readonly SetupRows[] }) {
  const { write, newRowId } = useBuild();
  const { system } = useShop();
  const plan = usePlanContext();
  const { series } = useBench();
  const byPictures = useBeginStand();
  const [edge, setEdge] = useState<Edge>('upper');
  const [clampHeight, setClampHeight] = useState<QuantityValue | null>(null);
  if (!plan) {
    return (
      <p>
        The plan follows from the blank: first the length of every section, how deep they seat, and a diameter
        at the tip and at the butt.
      </p>
    );
  }
  const firstOrder = standing.length;
  const rest = (kind: ProtocolKind) =>
    restOfPlan(plan.protocol(kind, clampHeight?.si).setups, standing, {
      system,
      edge,
      clampHeight,
      firstOrder,
      newRowId,
    });
  const layOut = (kind: ProtocolKind) => {
    write(`protocol:${kind}`, rest(kind));
    leadOn('readings');
  };
  const spared = isSpared(series);
  const hint = spared ? undefined : notSparedWords(series);
  const count = (kind: ProtocolKind) => readingsAsked(rest(kind));
  const long = count('twenty-minute');
  return (
    <div className="choose-protocol">
      <div className="fields-row">
        <FewChoices
          label="Line of the blank you will read, the same everywhere"
          options={readingEdges}
          value={edge}
          choose={(line: Edge) => setEdge(line)}
        />
        <HeightQuestion setHeight={setClampHeight} />
      </div>
      <div className="ways">
        <Way
          title="Three photographs"
          words="Three pictures from one stand, with marks on the wall behind: nothing hung, a weight, about twice that. About five minutes."
          onTake={byPictures}
        />
        {spared && (
          <Way
            title="Half protocol with its series"
            words={sparedWords(series, { short: count('with-series'), full: long })}
            onTake={() => layOut('with-series')}
          />
        )}
        {firstOrder === 0 && (
          <Way
            title="Ten-minute start"
            words={`One set-up, ${count('ten-minute')} readings, one weight. A first layout, with an honestly wide ±.`}
            onTake={() => layOut('ten-minute')}
          />
        )}
        {long > 0 && (
          <Way
            title="Twenty-minute protocol"
            words={`${firstOrder > 0 ? `${long} more readings, if the clamp was not touched since` : `Four set-ups, ${long} readings`}; the clamp moved up the blank. That tells more than forty readings at the butt. A narrow ±, enough to mark by.`}
            onTake={() => layOut('twenty-minute')}
          />
        )}
        {firstOrder > 0 && (
          <Way
            title="Stretch on two supports"
            words="Two sags, with nothing hung and under a weight between the supports. They tell how stiff this stretch is, whatever the tilt of the clamp."
            onTake={() => write('twoSupports', newSpan({ order: firstOrder, newRowId }))}
          />
        )}
      </div>
      {hint && <p className="quiet">{hint}</p>}
      <p className="quiet">{thirdWords(plan)}</p>
    </div>
  );
}

/** Asked before there is a row to keep it in. */
function HeightQuestion({ setHeight }: { setHeight(height: QuantityValue | null): void }) {
  const sentence = useSentence();
  const id = useId();
  const { system } = useShop();
  const [typed, setTyped] = useState('');
  const read = typed.trim() === '' ? undefined : readQuantity(typed, { dimension: 'length', system });
  const type = (text: string) => {
    setTyped(text);
    const now = readQuantity(text, { dimension: 'length', system });
    setHeight(now.ok ? { si: now.si, text: text.trim() } : null);
  };
  return (
    <div className="field">
      <label htmlFor={id} className="field-label">
        Height of the clamp above the floor, if you know it
      </label>
      <input
        id={id}
        className="field-input"
        value={typed}
        placeholder="weights are then kept off the floor"
        aria-describedby={`${id}-line`}
        aria-invalid={read?.ok === false || undefined}
        onChange={(event) => type(event.target.value)}
      />
      <FieldLine
        id={`${id}-line`}
        trouble={read?.ok === false ? sentence(read.finding) : undefined}
        echo={read?.ok ? read.understood : undefined}
      />
    </div>
  );
}

function Way({ title, words, onTake }: { title: string; words: string; onTake(): void }) {
  return (
    <section className="way">
      <h3>{title}</h3>
      <p>{words}</p>
      <Button className="button button-main" onPress={onTake}>
        Lay out the {title.toLowerCase()}
      </Button>
    </section>
  );
}

function thirdWords({ measured, thirdLoadKg }: Plan): string {
  const third = thirdLoadInWords(`about ${formatGrams(thirdLoadKg, 0)}`, 'at the butt');
  return measured
    ? `${third}, by your readings.`
    : `${third}. That is a guess from the diameters: it may take half as much, or twice.`;
}
