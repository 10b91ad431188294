import { useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import type { BenchTask } from '../../../words/bench-tasks.ts';
import { Figure } from '../../fields/figure.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { steps } from '../../parts/sheet/steps.ts';
import { useBuild } from '../../read/build-context.ts';
import { useBenchView } from '../../read/colours.ts';
import { useStayAwake } from '../../read/stay-awake.ts';
import { useNow } from '../../read/use-now.ts';
import { textOf } from '../../read/values.ts';
import { logQuarter } from './log-quarter.ts';
import { useBenchTasks } from './use-bench-tasks.ts';
import './plan.css';

/** The bench view: one piece of work at a time, large, with the next one a tap away; the screen stays on. */
export function BenchStep() {
  const { rows, write, newRowId } = useBuild();
  const { bench, setBench } = useBenchView();
  useStayAwake(true);
  const tasks = useBenchTasks(useNow());
  const ticked = new Map(rows('benchDone').map((row) => [textOf(row, 'task') ?? '', row.id]));
  const firstOpen = tasks.findIndex(({ id, gate }) => !ticked.has(id) && !gate);
  const [chosen, setChosen] = useState<string>();
  const at = Math.max(0, chosen === undefined ? firstOpen : tasks.findIndex(({ id }) => id === chosen));
  const task = tasks[at];
  if (!task) return <NextLine>The pieces of work follow from the blank, its handle and its marks.</NextLine>;
  const go = (to: number) => setChosen(tasks[Math.min(tasks.length - 1, Math.max(0, to))].id);
  const tick = () => {
    const row = newRowId();
    write(`tickOff:${task.id}`, [
      { path: ['benchDone', row, 'task'], value: task.id },
      { path: ['benchDone', row, 'doneAt'], value: new Date().toISOString() },
    ]);
    go(at + 1);
  };
  const untick = (row: string) =>
    write(`untick:${task.id}`, [{ path: ['benchDone', row, 'gone'], value: true }]);
  const row = ticked.get(task.id);
  return (
    <div className="bench-view">
      <SinceNote works={['wraps', 'handle']} />
      <section aria-label="The piece of work at hand" className="bench-card">
        <p className="quiet">
          {stepName(task)} · {at + 1} of {tasks.length}
          {row && ' · done'}
        </p>
        <h2>{task.title}</h2>
        <p className="bench-figure">
          <Figure text={task.figure} />
        </p>
        {task.lines.map((line) => (
          <p key={line} className="bench-line">
            <Figure text={line} />
          </p>
        ))}
      </section>
      <div className="bench-buttons">
        <Button className="button" isDisabled={at === 0} onPress={() => go(at - 1)}>
          Back
        </Button>
        <MainButton task={task} done={row !== undefined} tick={tick} untick={() => row && untick(row)} />
        <Button className="button" isDisabled={at === tasks.length - 1} onPress={() => go(at + 1)}>
          Next
        </Button>
      </div>
      <div className="bench-buttons">
        <Button
          className="button"
          onPress={() =>
            write('logQuarter', logQuarter(newRowId(), { order: rows('hours').length, stage: task.stage }))
          }
        >
          + 1/4 h on {stepName(task).toLowerCase()}
        </Button>
        <Button className="button" aria-pressed={bench} onPress={() => setBench(!bench)}>
          {bench ? 'Smaller on this device' : 'Larger on this device'}
        </Button>
      </div>
    </div>
  );
}

interface MainProps {
  task: BenchTask;
  done: boolean;
  tick(): void;
  untick(): void;
}

/** What cannot be undone is done where its gate stands. */
function MainButton({ task, done, tick, untick }: MainProps) {
  const { id } = useBuild();
  if (task.gate) {
    return (
      <Link className="button button-main" href={`/builds/${id}/${task.stage}`}>
        To its gate
      </Link>
    );
  }
  return (
    <Button className="button button-main" onPress={done ? untick : tick}>
      {done ? 'Not done after all' : 'Done'}
    </Button>
  );
}

function stepName({ stage }: BenchTask): string {
  return steps.find(({ id }) => id === stage)?.name ?? stage;
}
