import { useMemo } from 'react';
import { addedInWords, finishedRows } from '../../../words/finished-rod.ts';
import { standingMarksInWords } from '../../../words/standing-marks.ts';
import { Figure } from '../../fields/figure.tsx';
import { Part } from '../../parts/sheet/part.tsx';
import { Table } from '../../parts/sheet/table.tsx';
import { useBench } from '../../read/bench.tsx';
import { useShop } from '../../read/shop.tsx';
import { useSheetModel } from '../../read/use-rod-sheet.ts';
import type { FinishedTask } from '../../worker/doubt-messages.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

/** What guides, thread and finish change. */
export function FinishedPart() {
  const { writer } = useShop();
  const { bench } = useBench();
  const model = useSheetModel();
  const task = useMemo((): FinishedTask | undefined => {
    if (!model || !bench || model.unreadable) return undefined;
    const { choices, blank, diameters, rod, ladder, field } = model;
    const parts = { bench, choices, blank, diameters, rod, ladder: ladder.ladder };
    return { does: 'finished', parts, marksFromTipM: field.fromTipM };
  }, [model, bench]);
  const { answer, working, failure } = useLongTask(task, doubtLane);
  if (!model || !task) return null;
  return (
    <Part folded title="Bare blank and finished rod" aside={standingMarksInWords(model.marksAre)}>
      {failure && <p role="alert">This could not be worked out: {failure}.</p>}
      {!answer && !failure && <p className="quiet">Working it out …</p>}
      {answer && (
        <>
          <p className={working ? 'quiet' : undefined}>
            <Figure text={addedInWords(answer, writer)} />
          </p>
          <Table
            label="What guides, thread and finish change"
            heads={['read', 'bare blank', 'finished rod']}
            rows={finishedRows(answer, writer).map(({ name, bare, finished }) => [name, bare, finished])}
          />
        </>
      )}
    </Part>
  );
}
