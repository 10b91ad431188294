import { useMemo } from 'react';
import { powerQuestion } from '../../../engine/flow/power.ts';
import { readSwings } from '../../../record/read-swings.ts';
import { useBench } from '../../read/bench.tsx';
import { useBuild } from '../../read/build-context.ts';
import { useRodSheet } from '../../read/use-rod-sheet.ts';
import type { PowerTask } from '../../worker/doubt-messages.ts';
import { doubtLane } from '../../worker/engine-worker.ts';
import { type LongTaskState, useLongTask } from '../../worker/use-long-task.ts';

export interface PowerOnBench {
  state: LongTaskState<PowerTask>;
  /** In front of the grip. */
  freeLengthM: number;
  /** Whether something was hung on the blank. */
  measured: boolean;
}

/** How the blank swings and what drops its tip by a third, worked out after the fit; undefined until there is a blank. */
export function usePower(): PowerOnBench | undefined {
  const { document } = useBuild();
  const { bench, choices, fit, stiffness } = useBench();
  const made = useRodSheet();
  const { solved } = stiffness;
  const swings = useMemo(() => readSwings(document), [document]);
  const task = useMemo((): PowerTask | undefined => {
    if (!bench || !choices || !made?.sheet) return undefined;
    const { blank, diameters, field, rod } = made.sheet;
    const at = { marksFromTipM: field.fromTipM, freeLengthM: rod.lengthM };
    const question = powerQuestion({ bench, choices, blank, diameters }, at, swings);
    return { does: 'power', fit: solved && fit?.request, tables: made.tables, question };
  }, [bench, choices, fit, made, solved, swings]);
  const state = useLongTask(task, doubtLane);
  return task && { state, freeLengthM: task.question.freeLengthM, measured: solved !== undefined };
}
