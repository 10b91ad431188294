import { Button } from 'react-aria-components';
import { DayField } from '../../fields/day-field.tsx';
import { NumberField } from '../../fields/number-field.tsx';
import { TextField } from '../../fields/text-field.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { textOf } from '../../read/values.ts';

/** What was done, and when the rod left. */
export function DonePart() {
  const { single, write } = useBuild();
  const job = single('job');
  const today = () => `${new Date().toISOString().slice(0, 10)}T12:00:00.000Z`;
  const mark = (field: 'doneAt' | 'handedOverAt', words: string) =>
    write(words, [{ path: ['job', '-', field], value: today() }]);
  return (
    <Part title="Done">
      <TextField
        label="What was done"
        path={['job', '-', 'done']}
        lines={2}
        placeholder="new tip-top 4.5/64, guides 1 and 2 moved, thread and its lot"
      />
      <div className="fields-row">
        <NumberField label="Time it took" unit="min" path={['job', '-', 'minutes']} />
        <DayField label="Done on" path={['job', '-', 'doneAt']} />
        <DayField label="Handed over on" path={['job', '-', 'handedOverAt']} />
      </div>
      <div className="print-line">
        {!textOf(job, 'doneAt') && (
          <Button className="button button-main" onPress={() => mark('doneAt', 'done')}>
            Done today
          </Button>
        )}
        {textOf(job, 'doneAt') && !textOf(job, 'handedOverAt') && (
          <Button className="button button-main" onPress={() => mark('handedOverAt', 'handed over')}>
            Handed over today
          </Button>
        )}
      </div>
    </Part>
  );
}
