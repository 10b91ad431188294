import type { LayoutRequest } from '../../engine/layout/layout-request.ts';
import type { LayoutTask } from './messages.ts';
import { type LongTaskState, useLongTask } from './use-long-task.ts';

/** The best layout for a blank, worked out in the background whenever what it depends on changes. */
export function useLayoutProposal(request: LayoutRequest | undefined): LongTaskState<LayoutTask> {
  return useLongTask(request && { does: 'layout', request });
}
