import { useMemo, useRef } from 'react';
import type { CountQuestion, CountsAnswer } from '../../../engine/flow/count-answer.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import { patientLane } from '../../worker/engine-worker.ts';
import { useLongTask } from '../../worker/use-long-task.ts';

export interface Counts {
  /** While `working` as far as it is known, or of the build as it was. */
  answer: CountsAnswer | undefined;
  working: boolean;
  failure: string | undefined;
}

/** One guide fewer, as many, one more: placed in the background; the first time after what matters more. */
export function useCounts(model: SheetModel, waits: boolean): Counts {
  const question = useMemo(() => (model.unreadable ? undefined : countQuestion(model)), [model]);
  const begun = useRef(false);
  if (!waits) begun.current = true;
  const { answer, progress, working, failure } = useLongTask(
    begun.current && question ? { does: 'counts' as const, question } : undefined,
    patientLane,
  );
  return { answer: working ? (progress ?? answer) : answer, working: !begun.current || working, failure };
}

/**
 * Marks between the ends change nothing in the answer unless they are pinned: spread evenly here, so that a guide
 * that moves does not set the work going anew.
 */
function countQuestion({ counted, field: { fromTipM } }: SheetModel): CountQuestion {
  const { choices } = counted;
  const last = choices.guides.length - 1;
  const own = choices.guides.every(({ stationM }) => stationM !== undefined);
  const evenM = (i: number) => fromTipM[0] + ((fromTipM[last] - fromTipM[0]) * i) / last;
  const guides = choices.guides.map((guide, i) =>
    own && !guide.pinned && i > 0 && i < last ? { ...guide, stationM: evenM(i) } : guide,
  );
  return { ...counted, choices: { ...choices, title: '', guides } };
}
