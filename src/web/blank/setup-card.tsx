import { Button } from 'react-aria-components';
import type { QuantityValue } from '../../record/schema.ts';
import { ChoiceField } from '../fields/choice-field.tsx';
import { QuantityField } from '../fields/quantity-field.tsx';
import { TextField } from '../fields/text-field.tsx';
import { useBuild } from '../read/build.tsx';
import { textOf } from '../read/values.ts';
import { useSay } from '../shell/messages.tsx';
import { readingRows } from './plan-rows.ts';
import type { SetupRows } from './reading-rows.ts';
import { SetupSketch } from './setup-sketch.tsx';
import { TestColumn } from './test-column.tsx';

/** One set-up on the bench: where the blocks hold, where the flags are, and a column per weight. */
export function SetupCard({ rows, index }: { rows: SetupRows; index: number }) {
  const { setup, tests } = rows;
  const { write, newRowId } = useBuild();
  const say = useSay();
  const name = textOf(setup, 'name') ?? `Set-up ${index + 1}`;
  const path = (field: string) => ['setups', setup.id, field] as const;
  const addWeight = () => {
    const id = newRowId();
    const stations = tests.at(-1)?.readings.map((row) => row.fields.fromTip as QuantityValue) ?? [];
    write('another weight', [
      { path: ['tests', id, 'order'], value: tests.length },
      { path: ['tests', id, 'setup'], value: setup.id },
      { path: ['tests', id, 'hungFromTip'], value: { si: 0, text: '0' } },
      ...(stations.length > 0 ? stations : [{ si: 0, text: '0' }]).flatMap((station, order) =>
        readingRows(id, station, order, newRowId),
      ),
    ]);
  };
  const remove = () => {
    write('remove a set-up', [{ path: path('gone'), value: true }]);
    say(`${name} is removed; undo brings it back.`);
  };
  return (
    <section className="setup-card" aria-label={name}>
      <h3>
        <span className="section-number">{index + 1}</span> {name}
      </h3>
      <div className="setup-top">
        <SetupSketch rows={rows} />
        <div className="fields-two">
          <QuantityField
            label="Tip to the edge of the blocks"
            path={path('clampFromTip')}
            gesture="place of the blocks"
          />
          <QuantityField
            label="Blocks over the floor"
            path={path('clampHeight')}
            gesture="height of the blocks"
          />
        </div>
      </div>
      <div className="test-columns" data-group="">
        {tests.map((test, order) => (
          <TestColumn key={test.test.id} rows={test} setup={setup} order={order} />
        ))}
      </div>
      <details className="screen-only">
        <summary>More about this set-up</summary>
        <div className="fields-row">
          <TextField label="Name" path={path('name')} gesture="name of a set-up" />
          <QuantityField
            label="Axis at the blocks, above level"
            path={path('nominalAngle')}
            gesture="angle of the blocks"
          />
          <QuantityField
            label="Blank turned about its axis"
            path={path('turned')}
            gesture="turn of the blank"
            placeholder="0°"
          />
          <QuantityField
            label="Readings good to ±"
            path={path('sigma')}
            gesture="± of the readings"
            placeholder="2 mm"
          />
          <ChoiceField
            label="Line of the blank that was read"
            path={path('edge')}
            unset="axis"
            options={edges}
          />
        </div>
        <Button className="plain" onPress={addWeight}>
          Another weight
        </Button>
        <Button className="plain" onPress={remove}>
          Remove this set-up
        </Button>
      </details>
    </section>
  );
}

export const edges = [
  { value: 'upper', name: 'upper edge' },
  { value: 'axis', name: 'middle' },
  { value: 'lower', name: 'lower edge' },
];
