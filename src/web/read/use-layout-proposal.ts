import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import type { LayoutTask } from '../worker/messages.ts';
import { type LongTaskState, useLongTask } from '../worker/use-long-task.ts';
import { useBench } from './bench.tsx';

/** The marks proposed for a blank, worked out in the background whenever what they depend on changes. */
export function useLayoutProposal(request: LayoutRequest | undefined): LongTaskState<LayoutTask> {
  const { fit, stiffness } = useBench();
  const readings = stiffness.solved ? fit?.request : undefined;
  return useLongTask(request && { does: 'layout', request, ...(readings ? { fit: readings } : {}) });
}
