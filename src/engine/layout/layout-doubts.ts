/** What may be doubted about a layout: loads without a bend of their own, and what no placing could better. */

import type { Finding } from '../finding.ts';
import type { LadderReading } from './ladder.ts';
import { layoutFound } from './layout-kinds.ts';
import type { SettledLayout } from './layout-request.ts';
import type { PlacedGuides } from './place-guides.ts';

/** Loads that the start could not carry were left out of the placing, whatever became of them. */
export function statusOf(
  reading: LadderReading,
  startReading: LadderReading,
): { status: LadderReading['status']; lostLoads?: number[] } {
  const failed = startReading.status === 'not-converged' ? 'not-converged' : reading.status;
  if (failed === 'converged') return { status: failed };
  const lostLoads = reading.loads.flatMap((load, k) =>
    load.status === failed || startReading.loads[k].status === failed ? [k] : [],
  );
  return { status: failed, lostLoads };
}

/** What the builder should know about the answer beside its numbers. */
export function doubtsOf(
  { held }: SettledLayout,
  { worstAt, worst }: LadderReading,
  placed: PlacedGuides,
): Finding[] {
  const findings: Finding[] = [];
  const betweenHeld = (index: number) =>
    (index === 0 ? true : held[index - 1] !== undefined) && held[index] !== undefined;
  if (worst > 0 && worstAt.metric !== 'lineAngle' && betweenHeld(worstAt.index)) {
    const path = worstAt.index === 0 ? 'firstFromTipM' : 'pinned';
    findings.push(layoutFound(path, 'layout/worst-between-held', { guide: worstAt.index + 1 }));
  }
  if (placed.cutShort) findings.push(layoutFound('keepOut', 'layout/search-cut-short', {}));
  return findings;
}
