import { useMemo } from 'react';
import { standingSetup, wasLoaded } from '../../../engine/flow/next-reading-question.ts';
import { useBench } from '../../read/bench.tsx';
import { sheetModel } from '../../read/sheet-model.ts';
import type { NextReadingTask } from '../../worker/doubt-messages.ts';
import { patientLane } from '../../worker/engine-worker.ts';
import { type LongTaskState, useLongTask } from '../../worker/use-long-task.ts';

export interface NextReadingState extends LongTaskState<NextReadingTask> {
  /** Why it is not asked at all. */
  missing: string | undefined;
}

/** Worked out in a lane of its own, once the stiffness of the bench as it stands is known. */
export function useNextReading(): NextReadingState {
  const { bench, choices, fit, stiffness } = useBench();
  const { solved, working } = stiffness;
  const asked = useMemo(() => {
    if (!bench || !choices || !fit || !wasLoaded(fit.request)) return { missing: notRead };
    if (!solved || working || solved.status !== 'converged') return {};
    const model = sheetModel({ bench, choices, tables: solved });
    if (!model) return { missing: noMarks };
    if (model.unreadable) return { missing: model.unreadable };
    const task: NextReadingTask = {
      does: 'nextReading',
      fit: fit.request,
      request: model.request,
      ...standingSetup(bench),
    };
    return { task };
  }, [bench, choices, fit, solved, working]);
  const state = useLongTask(asked.task, patientLane);
  return { ...state, missing: asked.missing };
}

const notRead = 'It is worked out as soon as a drop is read under a weight.';
const noMarks = 'It is worked out once the blank has room for guides in front of the grip.';
