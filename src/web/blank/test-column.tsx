import { Button } from 'react-aria-components';
import type { Row } from '../../record/document.ts';
import type { QuantityValue } from '../../record/schema.ts';
import { Figure } from '../fields/figure.tsx';
import { FlagField } from '../fields/flag-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { showQuantity } from '../fields/quantity-text.ts';
import { useBuild } from '../read/build.tsx';
import { useShop } from '../read/shop.tsx';
import { flagOf, quantityOf, siOf, textOf } from '../read/values.ts';
import { readingRows } from './plan-rows.ts';
import type { TestRows } from './reading-rows.ts';
import { useHeavyLoad } from './use-heavy-load.ts';

/** One weight of a set-up, and the drops read under it; a value, Enter, the next value. */
export function TestColumn({ rows, setup, order }: { rows: TestRows; setup: Row; order: number }) {
  const { test, readings } = rows;
  const { write, newRowId } = useBuild();
  const heavy = useHeavyLoad(test.id, siOf(test, 'hung'));
  const hung = quantityOf(test.fields.hung)?.text ?? '';
  const add = () =>
    write('another station', readingRows(test.id, { si: 0, text: '0' }, readings.length, newRowId));
  return (
    <fieldset className="test-column">
      <legend className="visually-hidden">
        Weight {order + 1} of {textOf(setup, 'name') ?? 'this set-up'}
      </legend>
      <QuantityField label="Hang" path={['tests', test.id, 'hung']} gesture="weight" />
      {heavy && (
        <div className="gate" role="note">
          <p className="attention">{heavy}</p>
          <FlagField path={['blank', '-', 'ferrulesBound']} gesture="ferrules bound">
            The ferrules are wrapped or tightly bound
          </FlagField>
        </div>
      )}
      {readings.map((reading) => (
        <ReadingRow key={reading.id} reading={reading} hung={hung} gated={heavy !== undefined} />
      ))}
      <Button className="plain small screen-only" onPress={add}>
        Another station
      </Button>
    </fieldset>
  );
}

function ReadingRow({ reading, hung, gated }: { reading: Row; hung: string; gated: boolean }) {
  const { system } = useShop();
  const { write } = useBuild();
  const station = reading.fields.fromTip as QuantityValue | undefined;
  const shown = station ? showQuantity(station, 'length', system).text : 'station not given';
  const place = station?.si === 0 ? 'tip' : shown;
  const aside = flagOf(reading, 'setAside');
  const drop = siOf(reading, 'drop') !== undefined;
  return (
    <div className={aside ? 'reading reading-aside' : 'reading'}>
      <details className="reading-place">
        <summary>
          <Figure text={place} />
        </summary>
        <div className="reading-more">
          <QuantityField
            label="Station from the tip"
            path={['readings', reading.id, 'fromTip']}
            gesture="station"
          />
          <Button
            className="plain small"
            onPress={() =>
              write('set a reading aside', [{ path: ['readings', reading.id, 'setAside'], value: !aside }])
            }
          >
            {aside ? 'Count it again' : 'Set it aside'}
          </Button>
          <Button
            className="plain small"
            onPress={() =>
              write('remove a reading', [{ path: ['readings', reading.id, 'gone'], value: true }])
            }
          >
            Remove
          </Button>
        </div>
      </details>
      <QuantityField
        label={`Drop at ${place}${hung ? ` under ${hung}` : ''}`}
        labelHidden
        path={['readings', reading.id, 'drop']}
        gesture={`drop at ${place}`}
        placeholder={drop || aside ? undefined : 'drop'}
        disabled={gated && !drop}
      />
      {aside && <p className="aside small">set aside, not counted</p>}
    </div>
  );
}
