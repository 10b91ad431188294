import type { SlackTask } from './messages.ts';
import { type LongTaskState, useLongTask } from './use-long-task.ts';

/** How far each mark of a layout may move; undefined: nothing to ask. */
export function useSlack(layout: Omit<SlackTask, 'does'> | undefined): LongTaskState<SlackTask> {
  return useLongTask(layout && { does: 'slack', ...layout });
}
