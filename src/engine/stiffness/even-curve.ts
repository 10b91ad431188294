/**
 * A traced curve at equal steps from the tip, smoothed over a few centimetres: at every place the parabola through
 * its neighbourhood. A rod that points to -x is turned about.
 */
import type { EvenCurve } from './curve-moment.ts';
import { arcFromTip, facingRight, type PlanePoint, smoothPlace } from './curve-places.ts';

/** `points` from hold to tip; the curve ends at `clampFromTipM` or where it was traced to. */
export function evenCurve(
  points: readonly PlanePoint[],
  clampFromTipM: number,
  { stepM, windowM }: { stepM: number; windowM: number } = { stepM: 0.01, windowM: 0.04 },
): EvenCurve {
  const turned = facingRight(points);
  const fromTip = arcFromTip(turned);
  const reachM = Math.min(fromTip[0], clampFromTipM);
  const count = Math.max(8, Math.floor(reachM / stepM));
  const step = reachM / count;
  const places = Array.from({ length: count + 1 }, (_, i) => smoothPlace(turned, fromTip, i * step, windowM));
  return {
    stepM: step,
    xM: Float64Array.from(places, ({ xM }) => xM),
    yM: Float64Array.from(places, ({ yM }) => yM),
    angleRad: Float64Array.from(places, ({ directionRad }) => directionRad),
  };
}
