import { useEffect, useRef, useState } from 'react';
import { Button } from 'react-aria-components';
import { Link } from 'wouter';
import { rowChanges } from '../../../record/operation.ts';
import type { BenchTask } from '../../../words/bench-tasks.ts';
import { Figure } from '../../fields/figure.tsx';
import { NextLine } from '../../parts/sheet/next-line.tsx';
import { SinceNote } from '../../parts/sheet/since-note.tsx';
import { stepName } from '../../parts/sheet/steps.ts';
import { useBuild } from '../../read/build-context.ts';
import { useBenchView } from '../../read/colours.ts';
import { useStayAwake } from '../../read/stay-awake.ts';
import { useNow } from '../../read/use-now.ts';
import { textOf } from '../../read/values.ts';
import { BenchBar } from './bench-bar.tsx';
import { logQuarter } from './log-quarter.ts';
import { nextPiece } from './next-piece.ts';
import { PieceDrawing } from './piece-drawing.tsx';
import { useBenchTasks } from './use-bench-tasks.ts';
import './plan.css';

/** The bench view: one piece of work at a time, large, with the next one a press away; the screen stays on. */
export function BenchStep() {
  const { id, rows, write, newRowId } = useBuild();
  useStayAwake(true);
  const tasks = useBenchTasks(useNow());
  const ticked = new Map(rows('benchDone').map((row) => [textOf(row, 'task') ?? '', row.id]));
  const [chosen, choose] = useState<string>();
  const at = chosen === undefined ? nextPiece(tasks, ticked) : tasks.findIndex((one) => one.id === chosen);
  const task = tasks[at];
  const view = useMainKey(task?.id);
  if (tasks.length === 0) {
    return <NextLine>The pieces of work follow from the blank, its handle and its marks.</NextLine>;
  }
  if (!task) return <AllDone plan={`/builds/${id}/plan`} back={() => choose(tasks.at(-1)?.id)} />;
  const go = (to: number) => choose(tasks[to]?.id);
  const tick = () => {
    const row = newRowId();
    write(
      `tickOff:${task.id}`,
      rowChanges('benchDone', row, { task: task.id, doneAt: new Date().toISOString() }),
    );
    go(nextPiece(tasks, ticked, at + 1));
  };
  const row = ticked.get(task.id);
  const untick = () => write(`untick:${task.id}`, [{ path: ['benchDone', row ?? '', 'gone'], value: true }]);
  const skipped = tasks.slice(0, at).filter((one) => !ticked.has(one.id) && !one.gate).length;
  return (
    <div className="bench-view" ref={view}>
      <PieceCard task={task} place={placeWords({ at, of: tasks.length, done: row !== undefined, skipped })} />
      <SinceNote works={['wraps', 'handle']} />
      <BenchMore stage={task.stage} />
      <BenchBar
        gate={task.gate ? `/builds/${id}/${task.stage}` : undefined}
        done={row !== undefined}
        tick={tick}
        untick={untick}
        back={at > 0 ? () => go(at - 1) : undefined}
        on={() => go(at + 1)}
      />
    </div>
  );
}

/** Enter works on arrival: the large button has the focus whenever another piece comes. */
function useMainKey(piece: string | undefined) {
  const view = useRef<HTMLDivElement>(null);
  useEffect(() => {
    if (piece) view.current?.querySelector<HTMLElement>('.bench-main')?.focus({ preventScroll: true });
  }, [piece]);
  return view;
}

function PieceCard({ task, place }: { task: BenchTask; place: string }) {
  return (
    <section aria-label="The piece of work at hand" className="bench-card">
      <p className="quiet">
        {stepName(task.stage)} · {place}
      </p>
      <h2>{task.title}</h2>
      <p className="bench-figure">
        <Figure text={task.figure} />
      </p>
      {task.piece && <PieceDrawing piece={task.piece} figure={task.figure} />}
      {task.lines.map((line) => (
        <p key={line} className="bench-line">
          <Figure text={line} />
        </p>
      ))}
    </section>
  );
}

interface Place {
  at: number;
  of: number;
  done: boolean;
  /** Pieces before this one that are still open. */
  skipped: number;
}

function placeWords({ at, of, done, skipped }: Place): string {
  const open = skipped > 0 ? ` · ${skipped} before it still open` : '';
  return `${at + 1} of ${of}${done ? ' · done' : ''}${open}`;
}

function AllDone({ plan, back }: { plan: string; back(): void }) {
  return (
    <div className="bench-view">
      <section aria-label="The piece of work at hand" className="bench-card">
        <h2>Every piece here is done</h2>
        <p className="bench-line">Glue and finish are ticked at their own sheets.</p>
        <p>
          <Link className="button button-main" href={plan}>
            To the plan
          </Link>{' '}
          <button type="button" className="button" onClick={back}>
            Back
          </button>
        </p>
      </section>
    </div>
  );
}

/** What is seldom pressed at the bench: it lies under the card and gives way to the large button. */
function BenchMore({ stage }: { stage: string }) {
  const { rows, write, newRowId } = useBuild();
  const { bench, setBench } = useBenchView();
  const log = () => write('logQuarter', logQuarter(newRowId(), { order: rows('hours').length, stage }));
  return (
    <p className="bench-more">
      <Button className="plain" onPress={log}>
        + 1/4 h on {stepName(stage).toLowerCase()}
      </Button>
      <Button className="plain" aria-pressed={bench} onPress={() => setBench(!bench)}>
        {bench ? 'Smaller on this device' : 'Larger on this device'}
      </Button>
    </p>
  );
}
