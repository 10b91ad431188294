import type { FitRequest } from '../../engine/stiffness/request.ts';
import type { FitTask } from './messages.ts';
import { type LongTaskState, useLongTask } from './use-long-task.ts';

/** The stiffness of the blank from its bench, worked out again as rows are filled; undefined: no bench yet. */
export function useFit(request: FitRequest | undefined): LongTaskState<FitTask> {
  return useLongTask(request && { does: 'fit', request });
}
