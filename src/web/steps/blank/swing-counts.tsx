import { Button } from 'react-aria-components';
import { swingOf } from '../../../engine/flow/power.ts';
import { countedHz } from '../../../engine/flow/swing-count.ts';
import { stopwatchSigmaS } from '../../../engine/stiffness/swing-data.ts';
import { type CountedSwing, readSwings } from '../../../record/read-swings.ts';
import { countInWords, hzInWords } from '../../../words/swings.ts';
import type { Writer } from '../../../words/writer.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useShop } from '../../read/shop.tsx';
import type { PowerOnBench } from './use-power.ts';

/** Swings counted by hand, each beside what is predicted for the same rod held at the same place. */
export function SwingCounts({ power }: { power: PowerOnBench }) {
  const { document } = useBuild();
  const swings = readSwings(document);
  if (swings.length === 0) return null;
  return (
    <>
      {swings.map((swing, index) => (
        <SwingRow key={swing.id} swing={swing} number={index + 1} power={power} />
      ))}
      <p className="quiet small">
        Let the tip swing a hand’s width, no more. The frequency counted is swings over time; its ± is 1.96 ×
        frequency × {stopwatchSigmaS} s over the time, {stopwatchSigmaS} s for both presses of a stopwatch (a
        judgement, no source). A swing is there and back. A count of the bare blank is one of the readings
        that its stiffness is found from.
      </p>
    </>
  );
}

function SwingRow({ swing, number, power }: { swing: CountedSwing; number: number; power: PowerOnBench }) {
  const { write } = useBuild();
  const { writer } = useShop();
  const path = (field: string) => ['swings', swing.id, field] as const;
  return (
    <fieldset className="swing-row" data-group="">
      <legend className="field-label">Count {number}</legend>
      <div className="fields-row">
        <Field path={path('rod')} />
        <Field path={path('clampFromTip')} passedOver />
        <Field path={path('counted')} />
        <Field path={path('seconds')} />
      </div>
      <p role="status">{wordsOf(swing, power, writer)}</p>
      <Button
        className="plain small card-remove screen-only"
        onPress={() => write('removeSwings', [{ path: path('gone'), value: true }])}
      >
        Remove this count
      </Button>
    </fieldset>
  );
}

function wordsOf(
  { counted, seconds, rod, clampFromTipM }: CountedSwing,
  power: PowerOnBench,
  writer: Writer,
): string {
  if (counted === undefined || seconds === undefined)
    return 'Count about 40 swings, there and back, and time them.';
  const { state, freeLengthM } = power;
  const held = { rod, clampFromTipM: clampFromTipM ?? freeLengthM };
  const prediction = state.answer && swingOf(state.answer, held);
  if (prediction || !state.working) return countInWords({ counted, seconds }, prediction, writer);
  const { hz, plusMinusHz } = countedHz({ counted, seconds });
  return `Counted ${hzInWords(hz, plusMinusHz)}. Working out the prediction …`;
}
