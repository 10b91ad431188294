import type { ReelLineAnswer } from '../../../engine/flow/reel-line.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { bare } from '../../../words/places.ts';
import { Fold } from '../../parts/sheet/fold.tsx';
import { Table } from '../../parts/sheet/table.tsx';

export interface FanLoadsProps {
  answer: ReelLineAnswer;
  writer: LadderWriter;
}

/** The same fan while the blank bends: the reel stays with the hand, the first guide goes with the blank. */
export function FanLoads({ answer, writer }: FanLoadsProps) {
  return (
    <Fold title="The line off the reel under load">
      <Table
        label="The line off the reel under load"
        heads={['load', 'turns in the first guide', 'clear by']}
        rows={answer.loads.map((load, i) => [
          writer.loads[i],
          load
            ? `${bare(writer.angle(load.lineAngleRad.least))} to ${writer.angle(load.lineAngleRad.largest)}`
            : 'no bend found',
          {
            of: load ? clearWords(load, writer) : '–',
            className: load && load.clearanceM <= 0 ? 'attention' : undefined,
          },
        ])}
      />
    </Fold>
  );
}

function clearWords(
  { clearanceM, over }: { clearanceM: number; over: string },
  writer: LadderWriter,
): string {
  return clearanceM > 0 ? `${writer.fine(clearanceM)}, ${over}` : `touches the ${over}`;
}
