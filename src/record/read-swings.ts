import type { BareSwing } from '../engine/bench/bench.ts';
import type { SwingingRod } from '../engine/flow/power.ts';
import type { SwingCount } from '../engine/flow/swing-count.ts';
import type { DocumentState } from './operation.ts';
import { readRows } from './read-values.ts';

export interface CountedSwing extends Partial<SwingCount>, Pick<SwingingRod, 'rod'> {
  id: string;
  /** Undefined: held at the front of the grip. */
  clampFromTipM?: number;
}

/** Counts of the bare blank with both numbers. */
export function bareSwings(state: DocumentState): BareSwing[] {
  return readSwings(state).flatMap(({ id, rod, clampFromTipM, counted, seconds }) =>
    rod === 'bare' && counted !== undefined && seconds !== undefined
      ? [{ id, clampFromTipM, counted, seconds }]
      : [],
  );
}

/** Counts in the order they were made, half-filled ones too. */
export function readSwings(state: DocumentState): CountedSwing[] {
  return readRows(state, 'swings').map((row) => ({
    id: row.id,
    rod: row.text('rod') === 'finished' ? 'finished' : 'bare',
    clampFromTipM: row.si('clampFromTip'),
    counted: row.number('counted'),
    seconds: row.number('seconds'),
  }));
}
