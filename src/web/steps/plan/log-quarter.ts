import type { Change } from '../../../record/operation.ts';

/** A quarter of an hour on a stage. */
export function logQuarter(row: string, { order, stage }: { order: number; stage: string }): Change[] {
  return [
    { path: ['hours', row, 'order'], value: order },
    { path: ['hours', row, 'stage'], value: stage },
    { path: ['hours', row, 'minutes'], value: 15 },
    { path: ['hours', row, 'loggedAt'], value: new Date().toISOString() },
  ];
}
