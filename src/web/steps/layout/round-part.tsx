import { useMemo } from 'react';
import { Link } from 'wouter';
import type { Choices } from '../../../engine/flow/choices.ts';
import { roundQuestion } from '../../../engine/flow/round-questions.ts';
import { rodKindOf, usualPlaceRound } from '../../../engine/kinds/rod-kinds.ts';
import { clearInWords, handInWords, torsionInWords, turnInWords } from '../../../words/round.ts';
import { Field, FieldsRow } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Findings } from '../../parts/sheet/findings.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { useBuild } from '../../read/build-context.ts';
import { laidBuild, type SheetModel } from '../../read/sheet-model.ts';
import type { RoundTask } from '../../worker/doubt-messages.ts';
import { besideLane } from '../../worker/engine-worker.ts';
import { type LongTaskState, useLongTask } from '../../worker/use-long-task.ts';
import { HandsTable, type OneSideProps } from './hands-table.tsx';
import { RoundTable } from './round-table.tsx';
import { RoundView } from './round-view.tsx';
import type { SheetFrame } from './sheet-frame.ts';
import { SpiralAdvice } from './spiral-advice.tsx';
import type { Marks } from './use-marks.ts';
import type { Turning } from './use-turning.ts';
import './round.css';

export interface RoundPartProps extends OneSideProps {
  settled: SheetFrame;
  turning: Turning;
  marks: Marks;
}

/** Fly rods have their guides under the rod; whoever wants them elsewhere finds it with the loads. */
export function sidesAreAsked({ rodKind, spiral }: Choices): boolean {
  return !rodKindOf(rodKind).flyLine || spiral !== undefined;
}

/** A spiral: every ring seen along the rod, to be turned, and what each does to the line. */
export function RoundPart({ model, writer, waits, settled, turning, marks }: RoundPartProps) {
  const read = useRound(model, waits);
  const recorded = model.choices.guides.every(({ id }) => id !== undefined);
  return (
    <Part
      title="Guides round the blank"
      aside="seen along the rod from behind the butt"
      className="round-part"
    >
      <div className="round-sheet">
        <RoundView model={model} turning={turning} writer={writer} settled={settled} fixed={!recorded} />
        <div className="round-words">
          <RoundWords model={model} writer={writer} read={read} />
          {recorded && <SpiralAdvice model={model} writer={writer} waits={waits} />}
          <SideFields choices={model.choices} />
          <FieldsRow of="layout" names={['spiralBy', 'spiralOnTop', 'spiralOver']} />
        </div>
      </div>
      <Findings findings={model.roundFindings} />
      <RoundTable
        model={model}
        writer={writer}
        settled={settled}
        clear={read.answer}
        turning={turning}
        onTakeUp={recorded ? undefined : marks.takeUp}
      />
      <HandsFold model={model} writer={writer} waits={waits} />
    </Part>
  );
}

/** Guides on one side of a rod that is no fly rod. */
export function OneSidePart({ model, writer, waits }: OneSideProps) {
  const read = useRound(model, waits);
  return (
    <Part
      folded
      holds={['layout/-/guidesSide']}
      title="Guides on top, under or in a spiral"
      aside="where the line runs, and what your hand holds"
    >
      <SideFields choices={model.choices} />
      <RoundWords model={model} writer={writer} read={read} />
      <HandsFold model={model} writer={writer} waits={waits} />
    </Part>
  );
}

function SideFields({ choices }: { choices: Choices }) {
  return <Field path={['layout', '-', 'guidesSide']} usual={usualPlaceRound(choices.rodKind)} />;
}

function RoundWords({
  model,
  writer,
  read,
}: Omit<OneSideProps, 'waits'> & { read: LongTaskState<RoundTask> }) {
  const { id } = useBuild();
  const { answer, working, failure } = read;
  const loads = answer?.length === writer.loads.length ? answer : undefined;
  const spiral = model.round.length > 0;
  if (failure) return <p role="alert">This could not be worked out: {failure}.</p>;
  if (!loads) return <p className="quiet">{model.unreadable ?? 'Working it out …'}</p>;
  if (loads.some(({ status }) => status !== 'converged')) {
    return (
      <p className="attention">No bend was found at one of the loads. Take a lighter one off the ladder.</p>
    );
  }
  return (
    <div className={working ? 'quiet' : undefined} role="status">
      <p>
        <Figure text={clearInWords(loads, spiral, writer)} />
      </p>
      {spiral && (
        <p>
          <Figure text={turnInWords(loads, model.limits, writer)} />
        </p>
      )}
      <p>
        <Figure text={handInWords(loads, writer)} />
      </p>
      <p className="small quiet">
        {torsionInWords(model.torsion)}{' '}
        {model.torsion.by === 'material' && (
          <Link href={`/builds/${id}/blank/stiffness`}>Measure it with a bar.</Link>
        )}
      </p>
    </div>
  );
}

/** Read in space whatever side the guides stand on. */
function useRound(model: SheetModel, waits: boolean): LongTaskState<RoundTask> {
  const task = useMemo(() => {
    if (waits || model.unreadable || model.loads.ladder.length === 0) return undefined;
    return { does: 'round' as const, question: roundQuestion(laidBuild(model)) };
  }, [waits, model]);
  return useLongTask(task, besideLane);
}

function HandsFold({ model, writer, waits }: OneSideProps) {
  return (
    <Fold title="What your hand feels" aside="on top, under and in a spiral, side by side">
      <HandsTable model={model} writer={writer} waits={waits} />
    </Fold>
  );
}
