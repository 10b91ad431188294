import { useMemo } from 'react';
import { choiceDefaults } from '../../../engine/flow/choices.ts';
import type { HandRow } from '../../../engine/flow/round-answer.ts';
import type { Arrangement, Handling } from '../../../engine/flow/torque-in-hand.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { Figure } from '../../fields/figure.tsx';
import { TableFrame } from '../../parts/sheet/table-frame.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

export interface OneSideProps {
  model: SheetModel;
  writer: LadderWriter;
  /** What matters more is still being worked out in the same lane. */
  waits: boolean;
}

const arrangements: Record<Arrangement, string> = { 'on-top': 'on top', under: 'under', spiral: 'spiral' };
const handlings: Record<Handling, string> = {
  straight: 'straight down',
  sideways: 'pulled 15° sideways',
  rolled: 'rod rolled 10°',
};

/** For each load and way of holding: the torque that the hand holds and the twist of the tip. */
export function HandsTable({ model, writer, waits }: OneSideProps) {
  const task = useMemo(() => {
    if (waits || model.unreadable || model.loads.ladder.length === 0) return undefined;
    const { ladder } = model.ladder;
    const { share, low, high } = model.torsion;
    const question = {
      ladder,
      fromTipM: model.field.fromTipM,
      spiral: model.choices.spiral ?? choiceDefaults.spiral,
      shares: { share, low, high },
    };
    return { does: 'hands' as const, question };
  }, [waits, model]);
  const { answer, working, failure } = useLongTask(task);
  if (failure) return <p role="alert">This could not be worked out: {failure}.</p>;
  if (!answer) return <p className="quiet">{model.unreadable ?? 'Working it out …'}</p>;
  return (
    <div className={working ? 'quiet' : undefined}>
      <TableFrame label="What your hand feels" className="close-table">
        <table className="figures-table stacked hands-table">
          <thead>
            <tr>
              <th scope="col">load</th>
              <th scope="col">held</th>
              {Object.values(arrangements).map((name) => (
                <th key={name} scope="col">
                  {name}
                </th>
              ))}
            </tr>
          </thead>
          <tbody>
            {writer.loads.flatMap((name, load) =>
              (Object.keys(handlings) as Handling[]).map((handling) => (
                <tr key={`${name}${load}${handling}`}>
                  <th scope="row">{name}</th>
                  <td data-label="held">{handlings[handling]}</td>
                  {(Object.keys(arrangements) as Arrangement[]).map((arrangement) => (
                    <td key={arrangement} data-label={arrangements[arrangement]}>
                      <HandCell
                        row={rowOf(answer, { arrangement, handling, load })}
                        straight={rowOf(answer, { arrangement, handling: 'straight', load })}
                        writer={writer}
                      />
                    </td>
                  ))}
                </tr>
              )),
            )}
          </tbody>
        </table>
      </TableFrame>
      <p className="small quiet">
        The torque about the handle that your hand holds, then the twist of the tip. Pushes on: rolled a
        little, the rod wants to roll further. This is no promise that a rod will or will not roll over.
      </p>
    </div>
  );
}

function rowOf(rows: readonly HandRow[], of: Pick<HandRow, 'arrangement' | 'handling' | 'load'>) {
  return rows.find(
    (row) => row.arrangement === of.arrangement && row.handling === of.handling && row.load === of.load,
  );
}

interface HandCellProps {
  row: HandRow | undefined;
  /** The same rod pulled straight. */
  straight: HandRow | undefined;
  writer: LadderWriter;
}

function HandCell({ row, straight, writer }: HandCellProps) {
  if (row?.status !== 'converged') return <>no bend found</>;
  if (!row.stable) return <span className="attention">turns over</span>;
  const { least, most } = row.twistRangeRad;
  const [low, high] = [least, most]
    .map((rad) => Math.abs(rad))
    .sort((a, b) => a - b)
    .map(writer.lineAngle);
  const twist = low === high ? high : `${low.replace('°', '')} to ${high}`;
  return (
    <>
      <Figure text={writer.torque(Math.abs(row.handTorqueNm))} />
      {row.handling === 'rolled' && rolledWords(row.handTorqueNm - (straight?.handTorqueNm ?? 0))}{' '}
      <span className="quiet small">{twist}</span>
    </>
  );
}

/** More torque in the sense of the roll: the hand holds the rod in it, for it wants to go back. */
function rolledWords(moreNm: number): string {
  if (Math.abs(moreNm) < leastFeltNm) return '';
  return moreNm > 0 ? ', pushes back' : ', pushes on';
}
/** About a gram at a hand's breadth. */
const leastFeltNm = 1e-3;
