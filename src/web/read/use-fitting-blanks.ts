import { useMemo } from 'react';
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import type { BlanksTask } from '../worker/doubt-messages.ts';
import { doubtLane } from '../worker/engine-worker.ts';
import { useLongTask } from '../worker/use-long-task.ts';
import { useBench } from './bench.tsx';

export interface FittingBlanks {
  /** Empty while they are drawn, and where nothing was hung on the blank yet. */
  blanks: readonly BlankTables[];
  working: boolean;
}

/** Blanks that fit the readings: what a prediction's ± is read on. */
export function useFittingBlanks(): FittingBlanks {
  const { fit, stiffness } = useBench();
  const request = stiffness.solved && fit?.request;
  const task = useMemo((): BlanksTask | undefined => request && { does: 'blanks', fit: request }, [request]);
  const { answer, working } = useLongTask(task, doubtLane);
  return { blanks: task && !working && answer ? answer : none, working };
}

const none: readonly BlankTables[] = [];
