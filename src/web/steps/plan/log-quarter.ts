import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';

/** A quarter of an hour on a stage. */
export function logQuarter(row: string, { order, stage }: { order: number; stage: string }): Change[] {
  return rowChanges('hours', row, { order, stage, minutes: 15, loggedAt: new Date().toISOString() });
}
