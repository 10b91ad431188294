import { Button } from 'react-aria-components';
import { Field } from '../../fields/field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

/** What was done, and when the rod left. */
export function DonePart() {
  const { single, write } = useBuild();
  const job = single('job');
  const today = () => `${new Date().toISOString().slice(0, 10)}T12:00:00.000Z`;
  const mark = (field: 'doneAt' | 'handedOverAt') =>
    write(`set:job:${field}`, [{ path: ['job', '-', field], value: today() }]);
  return (
    <Part title="Done">
      <Field path={['job', '-', 'done']} />
      <div className="fields-row">
        <Field path={['job', '-', 'minutes']} />
        <Field path={['job', '-', 'doneAt']} />
        <Field path={['job', '-', 'handedOverAt']} />
      </div>
      <div className="print-line">
        {!textOf(job, 'doneAt') && (
          <Button className="button button-main" onPress={() => mark('doneAt')}>
            Done today
          </Button>
        )}
        {textOf(job, 'doneAt') && !textOf(job, 'handedOverAt') && (
          <Button className="button button-main" onPress={() => mark('handedOverAt')}>
            Handed over today
          </Button>
        )}
      </div>
    </Part>
  );
}
