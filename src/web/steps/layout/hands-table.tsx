import { useMemo } from 'react';
import { handsQuestion } from '../../../engine/flow/round-questions.ts';
import type { Arrangement, Handling } from '../../../engine/flow/torque-in-hand.ts';
import { arrangementNames, handInFigures, handlingNames } from '../../../words/hands.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { laidBuild, type SheetModel } from '../../read/sheet-model.ts';
import { besideLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

export interface OneSideProps {
  model: SheetModel;
  writer: LadderWriter;
  /** What matters more is still being worked out in the same lane. */
  waits: boolean;
}

/** For each load and way of holding: the torque that the hand holds and the twist of the tip. */
export function HandsTable({ model, writer, waits }: OneSideProps) {
  const task = useMemo(() => {
    if (waits || model.unreadable || model.loads.ladder.length === 0) return undefined;
    return { does: 'hands' as const, question: handsQuestion(laidBuild(model)) };
  }, [waits, model]);
  const { answer, working, failure } = useLongTask(task, besideLane);
  if (failure) return <p role="alert">This could not be worked out: {failure}.</p>;
  if (!answer) return <p className="quiet">{model.unreadable ?? 'Working it out …'}</p>;
  return (
    <div className={working ? 'quiet' : undefined}>
      <Table
        label="What your hand feels"
        frame="close-table"
        className="stacked hands-table"
        heads={['load', 'held', ...Object.values(arrangementNames)]}
      >
        {writer.loads.flatMap((name, load) =>
          (Object.keys(handlingNames) as Handling[]).map((handling) => (
            <tr key={`${name}${load}${handling}`}>
              <th scope="row">{name}</th>
              <td data-label="held">{handlingNames[handling]}</td>
              {(Object.keys(arrangementNames) as Arrangement[]).map((arrangement) => (
                <td key={arrangement} data-label={arrangementNames[arrangement]}>
                  <HandCell cell={handInFigures(answer, { arrangement, handling, load }, writer)} />
                </td>
              ))}
            </tr>
          )),
        )}
      </Table>
      <p className="small quiet">
        The torque about the handle that your hand holds, then the twist of the tip. Pushes on: rolled a
        little, the rod wants to roll further. This is no promise that a rod will or will not roll over.
      </p>
    </div>
  );
}

function HandCell({ cell }: { cell: ReturnType<typeof handInFigures> }) {
  if (!cell) return <>no bend found</>;
  if (cell.turnsOver) return <span className="attention">turns over</span>;
  return (
    <>
      <Figure text={cell.torque} /> <span className="quiet small">{cell.twist}</span>
    </>
  );
}
