/**
 * What a photograph of a curve may have wrong smoothly, as patterns in its readings with unknown amplitudes:
 * where the hold lies (2), how level the frame is (1), its scale (1), and what marks and lens leave over: stretch
 * along one axis and shear (2), perspective (2) and a radial cubic (1). With p = (x, y) from the
 * picture's middle over the curve's half extent R, a displacement δ of the traced curve changes a reading square
 * to direction ν by δ·(sin ν, -cos ν).
 *
 * The spread of each smooth term is the stated drift at the curve's edge. Source of the terms: a plane seen
 * through a wrong homography and an unmodelled radial lens, to second and third order (Hartley and Zisserman,
 * Multiple View Geometry, chapters 4 and 7); the spreads are judgement.
 */
import type { CurvePlace, CurvePlaces } from './curve-places.ts';

export interface DriftMode {
  /** Standard deviation of the amplitude. */
  sigma: number;
  /** Per reading of the curve, the traced length last. */
  pattern: Float64Array;
}
export interface DriftSpread {
  driftSigmaM: number;
  levelSigmaRad: number;
  /** How far the place taken for the hold may be off. */
  holdSigmaM: number;
  scaleSigma: number;
}
export const driftDefaults = {
  localSigmaM: 0.0008,
  driftSigmaM: 0.004,
  /** A frame levelled by a spirit level or a plumb line seen in the picture. */
  levelSigmaRad: 0.01,
  holdSigmaM: 0.005,
  scaleSigma: 0.004,
} as const;

/** A length between two taps: judgement, no source. */
export const tapSigmaM = 0.005;

export function driftModes({ hold, places }: CurvePlaces, spread: DriftSpread): DriftMode[] {
  const { driftSigmaM: drift, levelSigmaRad, holdSigmaM, scaleSigma } = spread;
  const all = [...places, hold];
  const middle = { xM: midOf(all.map(({ xM }) => xM)), yM: midOf(all.map(({ yM }) => yM)) };
  const halfM = Math.max(...all.map(({ xM, yM }) => Math.hypot(xM - middle.xM, yM - middle.yM)));
  const mode = (sigma: number, shift: Shift): DriftMode => ({
    sigma,
    pattern: patternOf(hold, places, (place) =>
      shift((place.xM - middle.xM) / halfM, (place.yM - middle.yM) / halfM),
    ),
  });
  return [
    mode(holdSigmaM, fixedShift(1, 0)),
    mode(holdSigmaM, fixedShift(0, 1)),
    mode(levelSigmaRad * halfM, (x, y) => [-y, x]),
    mode(scaleSigma * halfM, (x, y) => [x, y]),
    mode(drift, (x, y) => [x, -y]),
    mode(drift, (x, y) => [y, x]),
    mode(drift, (x, y) => [x * x, x * y]),
    mode(drift, (x, y) => [x * y, y * y]),
    mode(drift, (x, y) => [x * (x * x + y * y), y * (x * x + y * y)]),
  ];
}

type Shift = (x: number, y: number) => [number, number];

function fixedShift(x: number, y: number): Shift {
  return () => [x, y];
}

/** Readings count from where the hold was taken to be; that this may be off is the shift's own part. */
function patternOf(
  hold: CurvePlace,
  places: readonly CurvePlace[],
  shift: (place: CurvePlace) => [number, number],
): Float64Array {
  const pattern = new Float64Array(places.length + 1);
  let before = shift(hold);
  let from: CurvePlace = hold;
  places.forEach((place, i) => {
    const here = shift(place);
    pattern[i] = here[0] * Math.sin(place.directionRad) - here[1] * Math.cos(place.directionRad);
    // how much longer the curve gets
    const [dx, dy] = [place.xM - from.xM, place.yM - from.yM];
    const chord = Math.hypot(dx, dy) || 1;
    pattern[places.length] += ((here[0] - before[0]) * dx + (here[1] - before[1]) * dy) / chord;
    before = here;
    from = place;
  });
  return pattern;
}

function midOf(values: readonly number[]): number {
  return 0.5 * (Math.min(...values) + Math.max(...values));
}
