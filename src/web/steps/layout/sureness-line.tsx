import { useMemo } from 'react';
import type { Sureness } from '../../../engine/sureness/sureness.ts';
import { surenessInWords, surenessRangesInWords } from '../../../words/sureness.ts';
import { Figure } from '../../fields/figure.tsx';
import { Fold } from '../../parts/sheet/fold.tsx';
import { useBench } from '../../read/bench.tsx';
import type { SheetModel } from '../../read/sheet-model.ts';
import { useShop } from '../../read/shop.tsx';
import type { SurenessTask } from '../../worker/doubt-messages.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

interface SurenessLineProps {
  model: SheetModel;
  /** What matters more is still being worked out in the same lane. */
  waits: boolean;
}

/** Under the headline: how sure it is, on blanks that fit the readings; and that nothing is, before a reading. */
export function SurenessLine({ model, waits }: SurenessLineProps) {
  const { fit, stiffness } = useBench();
  const { writer } = useShop();
  const request = stiffness.solved && fit?.request;
  const task = useMemo((): SurenessTask | undefined => {
    if (!request || waits || model.unreadable) return undefined;
    const own = { ladder: model.ladder.ladder, fromTipM: model.field.fromTipM };
    const start = { ladder: model.startLadder.ladder, fromTipM: model.startFromTipM };
    const beside = model.startStands && model.startFromTipM.length > 1 && model.marksAre === 'own';
    return { does: 'sureness', fit: request, question: { own, start: beside ? start : undefined } };
  }, [request, waits, model]);
  const { answer, progress, working, failure } = useLongTask(task, doubtLane);
  if (!request) {
    return <p className="quiet">How sure this is cannot be said: nothing was hung on this blank yet.</p>;
  }
  if (model.unreadable) return null;
  if (failure) return <p className="quiet">How sure this is could not be worked out: {failure}.</p>;
  const read: Sureness | undefined = working ? progress : (answer ?? progress);
  if (!read) return <p className="quiet">Working out how sure this is …</p>;
  const ranges = surenessRangesInWords(read, writer);
  return (
    <div className={working ? 'sureness-line quiet' : 'sureness-line'}>
      <p>{surenessInWords(read)}</p>
      {ranges && (
        <Fold title="How sure">
          <p>
            <Figure text={ranges} />
          </p>
        </Fold>
      )}
    </div>
  );
}
