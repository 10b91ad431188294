/**
 * The bending moment along a traced curve, from statics alone.
 *
 * Of all that pulls on the part between a section p(s) and the tip:
 *   M(s) = Σ (r - p) × F        z component, positive turning the tip up
 * F: hung weights, what rides on the rod, its own weight, and the line: T ê at the tip-top's ring, and -T u at the
 * ring on the section's tip side, u the direction of the stretch of line that crosses the section.
 * Assumptions: planar, the line runs freely; rings stand square off the curve at the height stated.
 */
import { sideSign } from '../bend/bend-request.ts';
import { standardGravity } from '../units/gravity.ts';
import type { PlanePoint } from './curve-places.ts';
import type { FitCurve, FitLine } from './request.ts';

/** The curve by its distance from the tip, at equal steps. */
export interface EvenCurve {
  stepM: number;
  xM: Float64Array;
  yM: Float64Array;
  /** Direction from hold to tip. */
  angleRad: Float64Array;
}

/** `kgPerM` of the blank by its distance from the tip. Moment per place of the curve, N·m. */
export function curveMoment(
  curve: EvenCurve,
  load: Pick<FitCurve, 'hung' | 'masses' | 'line'>,
  kgPerM: (fromTipM: number) => number,
): Float64Array {
  const weights = weightMoment(curve, [...(load.hung ?? []), ...(load.masses ?? [])], kgPerM);
  if (!load.line) return weights;
  const byLine = lineMoment(curve, load.line);
  return weights.map((value, i) => value + byLine[i]);
}

function placeOnEven({ stepM, xM, yM }: EvenCurve, fromTipM: number): PlanePoint {
  const p = Math.min(xM.length - 1.000001, Math.max(0, fromTipM / stepM));
  const i = Math.floor(p);
  const t = p - i;
  return { xM: xM[i] + t * (xM[i + 1] - xM[i]), yM: yM[i] + t * (yM[i + 1] - yM[i]) };
}

function weightMoment(
  curve: EvenCurve,
  masses: readonly { fromTipM: number; massKg: number }[],
  kgPerM: (fromTipM: number) => number,
): Float64Array {
  const { stepM, xM } = curve;
  const points = masses.map(({ fromTipM, massKg }) => ({
    fromTipM,
    massKg,
    xM: placeOnEven(curve, fromTipM).xM,
  }));
  let kg = 0;
  let kgTimesX = 0;
  return xM.map((x, i) => {
    const s = i * stepM;
    if (i > 0) {
      const own = stepM * kgPerM(s - 0.5 * stepM);
      kg += own;
      kgTimesX += own * 0.5 * (xM[i - 1] + x);
    }
    let lever = kgTimesX - kg * x;
    for (const point of points) if (point.fromTipM < s) lever += point.massKg * (point.xM - x);
    return -standardGravity * lever;
  });
}

function lineMoment(curve: EvenCurve, line: FitLine): Float64Array {
  const { stepM, xM, yM } = curve;
  const { tensionN: t, pullAngleRad, rings } = line;
  const centres = rings.map(({ fromTipM, ringHeightM }) => ringCentre(curve, fromTipM, ringHeightM, line));
  const ahead = { x: t * Math.cos(pullAngleRad), y: t * Math.sin(pullAngleRad) };
  return xM.map((x, i) => {
    const s = i * stepM;
    const ring = lastBefore(rings, s);
    const tipTop = centres[0];
    const outgoing = (tipTop.xM - x) * ahead.y - (tipTop.yM - yM[i]) * ahead.x;
    // behind the last ring the line runs on to the reel
    const next = centres[ring + 1] ?? reelCentre(curve, line);
    const [dx, dy] = [centres[ring].xM - next.xM, centres[ring].yM - next.yM];
    const chord = Math.hypot(dx, dy) || 1;
    const crossing = (centres[ring].xM - x) * dy - (centres[ring].yM - yM[i]) * dx;
    return outgoing - (t * crossing) / chord;
  });
}

function lastBefore(rings: FitLine['rings'], s: number): number {
  let ring = 0;
  while (ring + 1 < rings.length && rings[ring + 1].fromTipM < s) ring++;
  return ring;
}

/** Where a ring's centre stands off the curve, along the left normal for 'over'. */
export function ringCentre(
  curve: EvenCurve,
  fromTipM: number,
  ringHeightM: number,
  { side }: Pick<FitLine, 'side'>,
): PlanePoint {
  const { xM, yM } = placeOnEven(curve, fromTipM);
  const i = Math.min(curve.angleRad.length - 1, Math.max(0, Math.round(fromTipM / curve.stepM)));
  const off = sideSign(side) * ringHeightM;
  return { xM: xM - off * Math.sin(curve.angleRad[i]), yM: yM + off * Math.cos(curve.angleRad[i]) };
}

function reelCentre({ xM, yM, angleRad }: EvenCurve, { reel, side }: FitLine): PlanePoint {
  const last = xM.length - 1;
  const [c, s] = [Math.cos(angleRad[last]), Math.sin(angleRad[last])];
  const off = sideSign(side) * reel.offsetM;
  return { xM: xM[last] + reel.alongM * c - off * s, yM: yM[last] + reel.alongM * s + off * c };
}
