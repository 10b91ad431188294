import type { ReactNode } from 'react';
import { Button } from 'react-aria-components';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import type { QuantityValue } from '../../../record/schema.ts';
import { Field } from '../../fields/field.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useSay } from '../../read/messages.tsx';
import { quantityOf } from '../../read/values.ts';
import { readingRows } from './plan-rows.ts';
import type { SetupRows } from './reading-rows.ts';

const tip: QuantityValue = { si: 0, text: '0' };

interface SetupFoldProps {
  id: string;
  name: string;
  fields: readonly string[];
  children?: ReactNode;
}

/** What is seldom changed of a set-up, and its removal. */
export function SetupFold({ id, name, fields, children }: SetupFoldProps) {
  const { write } = useBuild();
  const say = useSay();
  const remove = () => {
    write('removeSetup', [{ path: ['setups', id, 'gone'], value: true }]);
    say(`${name} is removed; undo brings it back.`);
  };
  return (
    <details className="setup-more screen-only">
      <summary>More about this set-up</summary>
      <div className="fields-row">
        <Field path={['setups', id, 'name']} pale={name} />
        {fields.map((field) => (
          <Field key={field} path={['setups', id, field]} />
        ))}
      </div>
      {children}
      <Button className="plain" onPress={remove}>
        Remove this set-up
      </Button>
    </details>
  );
}

/** Of a clamped one: its angle, its turn, its ±, rows added or taken away. */
export function SetupMore({ rows, name }: { rows: SetupRows; name: string }) {
  const { write, newRowId } = useBuild();
  return (
    <SetupFold id={rows.setup.id} name={name} fields={['day', 'nominalAngle', 'turned', 'sigma']}>
      <Button className="button" onPress={() => write('addWeight', anotherWeight(rows, newRowId))}>
        Another weight
      </Button>{' '}
      <Button className="button" onPress={() => write('addStation', anotherStation(rows, newRowId))}>
        Another station under every weight
      </Button>{' '}
    </SetupFold>
  );
}

/** A weight read at the same stations as the one before it. */
function anotherWeight({ setup, tests }: SetupRows, newRowId: () => string): Change[] {
  const id = newRowId();
  const stations = (tests.at(-1)?.readings ?? []).flatMap((row) => quantityOf(row.fields.fromTip) ?? []);
  return [
    ...rowChanges('tests', id, { order: tests.length, setup: setup.id, hungFromTip: tip }),
    ...(stations.length > 0 ? stations : [tip]).flatMap((station, order) =>
      readingRows(id, station, order, newRowId),
    ),
  ];
}

function anotherStation({ tests }: SetupRows, newRowId: () => string): Change[] {
  return tests.flatMap(({ test, readings }) => readingRows(test.id, tip, readings.length, newRowId));
}
