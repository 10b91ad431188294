import { useMemo } from 'react';
import { gripsQuestion } from '../../../engine/flow/round-questions.ts';
import type { TwoGripsAtLoad } from '../../../engine/flow/two-grips.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { lowerHandInWords, twoGripsInWords, upperHandInWords } from '../../../words/two-grips.ts';
import { Field } from '../../fields/field.tsx';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { laidBuild } from '../../read/sheet-model.ts';
import { besideLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';
import type { OneSideProps } from './hands-table.tsx';

/** A rod held with both hands: it bends from the upper one, the lower one holds the moment. */
export function TwoGripsPart({ model, writer, waits }: OneSideProps) {
  const { hands } = model.handle;
  const task = useMemo(() => {
    if (waits || model.unreadable || model.loads.ladder.length === 0) return undefined;
    const question = gripsQuestion(laidBuild(model));
    return question && { does: 'grips' as const, question };
  }, [waits, model]);
  const { answer, working, failure } = useLongTask(task, besideLane);
  const loads = answer?.length === writer.loads.length ? answer : undefined;
  return (
    <Part
      folded
      holds={['handle/-/upperHand', 'handle/-/lowerHand']}
      title="Held with both hands"
      aside="what each hand gives at each load"
    >
      <div className="fields-row" data-group="">
        <Field path={['handle', '-', 'upperHand']} usual={hands?.upperFromButtM} />
        <Field path={['handle', '-', 'lowerHand']} usual={hands?.lowerFromButtM} />
      </div>
      {failure && <p role="alert">This could not be worked out: {failure}.</p>}
      {loads ? (
        <div className={working ? 'quiet' : undefined}>
          <p role="status">
            <Figure text={twoGripsInWords(loads, writer)} />
          </p>
          <GripsTable loads={loads} writer={writer} />
        </div>
      ) : (
        !failure && <p className="quiet">{model.unreadable ?? 'Working it out …'}</p>
      )}
    </Part>
  );
}

function GripsTable({ loads, writer }: { loads: readonly TwoGripsAtLoad[]; writer: LadderWriter }) {
  return (
    <>
      <Table
        label="What each hand gives"
        frame="close-table"
        className="stacked"
        heads={['load', 'lower hand', 'upper hand', 'moment held']}
        rows={loads.map((at, load) => [
          writer.loads[load],
          lowerHandInWords(at, writer),
          upperHandInWords(at, writer),
          writer.torque(Math.abs(at.momentNm)),
        ])}
      />
      <p className="small quiet">
        Hands pull square to the handle. Handle and reel are left out; the grip between front and upper hand
        is taken as stiff.
      </p>
    </>
  );
}
