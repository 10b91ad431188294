/**
 * The line off a fixed spool: how it meets the first ring over one turn, how near it passes to blank and grip, where
 * the spool's axis meets the blank, and how wide each ring must be. Plain geometry on the straight rod (fan.ts,
 * funnel.ts). Under load the blank bends away from the spool; that is not in it.
 */
import type { Finding } from '../finding.ts';
import { checkSpool } from './check-spool.ts';
import { type FixedSpool, fanAngles, fanClearance, type Range, type RingPlace } from './fan.ts';
import { funnelEnds, insideNeededM } from './funnel.ts';
import type { SpoolRequest, SpoolRing } from './spool-request.ts';

export interface SpoolAnswered {
  status: 'converged';
  /** At the ring nearest the reel. */
  lineAngleRad: Range;
  /** Negative where a line of the fan would pass through blank or grip. */
  clearanceM: number;
  clearanceFromTipM: number;
  /** Null where the axis meets the blank's behind the reel, beyond the tip or nowhere. */
  axisMeetsFromTipM: number | null;
  /** In the order of the rings. */
  insideNeededM: number[];
}
export type SpoolAnswer = SpoolAnswered | { status: 'refused'; findings: Finding[] };

export function spool(request: SpoolRequest): SpoolAnswer {
  const findings = checkSpool(request);
  if (findings.length > 0) return { status: 'refused', findings };
  const { lengthM, surface, rings } = request;
  const alongM = ({ fromTipM }: SpoolRing) => lengthM - fromTipM;
  const place = (ring: SpoolRing): RingPlace => ({ alongM: alongM(ring), underM: ring.ringHeightM });
  const [first, next] = rings.toSorted((a, b) => b.fromTipM - a.fromTipM);
  const clearance = fanClearance(request.spool, place(first), { surface, lengthM });
  const ends = funnelEnds(
    request.spool,
    rings.map((ring) => ({ alongM: alongM(ring), insideM: ring.insideM })),
  );
  return {
    status: 'converged',
    lineAngleRad: fanAngles(request.spool, place(first), place(next)),
    clearanceM: clearance.clearanceM,
    clearanceFromTipM: lengthM - clearance.alongM,
    axisMeetsFromTipM: axisMeetsFromTipM(request.spool, lengthM) ?? null,
    insideNeededM: rings.map((ring) => insideNeededM(ends, alongM(ring))),
  };
}

/** Undefined where the axis does not meet the blank's between the reel and the tip. */
export function axisMeetsFromTipM(
  { alongM, offsetM, tiltRad }: FixedSpool,
  lengthM: number,
): number | undefined {
  if (!(Math.tan(tiltRad) > 0)) return undefined;
  const fromTipM = lengthM - alongM - offsetM / Math.tan(tiltRad);
  return fromTipM > 0 ? fromTipM : undefined;
}
