import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import { useBench } from '../read/bench.tsx';
import type { LayoutTask } from './messages.ts';
import { type LongTaskState, useLongTask } from './use-long-task.ts';

/** The marks proposed for a blank, worked out in the background whenever what they depend on changes. */
export function useLayoutProposal(request: LayoutRequest | undefined): LongTaskState<LayoutTask> {
  const { fit, stiffness } = useBench();
  const readings = stiffness.solved ? fit?.request : undefined;
  return useLongTask(request && { does: 'layout', request, ...(readings ? { fit: readings } : {}) });
}
