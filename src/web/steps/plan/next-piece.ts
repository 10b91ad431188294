import type { BenchTask } from '../../../words/bench-tasks.ts';

/**
 * The piece that is shown next, from a place on: open, and to be ticked here; on the way a gate is shown too. When
 * nothing is left behind that place, the first that was skipped; the list's length when all is done.
 */
export function nextPiece(
  tasks: readonly Pick<BenchTask, 'id' | 'gate'>[],
  done: { has(id: string): boolean },
  from?: number,
): number {
  const open = ({ id }: { id: string }) => !done.has(id);
  const ahead = from === undefined ? -1 : tasks.findIndex((task, at) => at >= from && open(task));
  if (ahead >= 0) return ahead;
  const current = from === undefined ? undefined : from - 1;
  const first = tasks.findIndex((task, at) => open(task) && !task.gate && at !== current);
  return first < 0 ? tasks.length : first;
}
