/** What may be doubted about a layout: loads without a bend of their own, and what no placing could better. */

import type { Finding } from '../finding.ts';
import { said } from '../finding.ts';
import type { LadderReading } from './ladder.ts';
import type { SettledLayout } from './layout-request.ts';
import type { PlacedGuides } from './place-guides.ts';

/** Loads that the start could not carry were left out of the placing, whatever became of them. */
export function statusOf(
  reading: LadderReading,
  startReading: LadderReading,
): { status: LadderReading['status']; reason?: string } {
  const failed = startReading.status === 'not-converged' ? 'not-converged' : reading.status;
  if (failed === 'converged') return { status: failed };
  const numbers = reading.loads
    .flatMap((load, k) => (load.status === failed || startReading.loads[k].status === failed ? [k + 1] : []))
    .join(', ');
  const reason =
    failed === 'not-converged'
      ? `no bend was found under load ${numbers} of the ladder; it was left out of the placing`
      : `under load ${numbers} of the ladder the rod snaps to another bend on the way`;
  return { status: failed, reason };
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
    const where =
      worstAt.index === 0
        ? 'between the tip-top and guide 1'
        : `between guides ${worstAt.index} and ${worstAt.index + 1}`;
    const message = `the worst reading is ${where}, which are both held: only moving one of them can better it`;
    findings.push(said(worstAt.index === 0 ? 'firstFromTipM' : 'pinned', message));
  }
  if (placed.cutShort) {
    const message =
      'the kept-free zones allow more ways than were tried; a better layout may exist: fewer zones, or pinning a guide beside a zone, makes the search complete';
    findings.push(said('keepOut', message));
  }
  return findings;
}
