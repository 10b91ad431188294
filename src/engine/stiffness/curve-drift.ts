/**
 * What a photograph of a curve may have wrong smoothly, as patterns in its readings with unknown amplitudes: a field
 * of displacements over the wall. With p = (x, y) from the pictures' middle over their half extent R, a displacement δ of
 * the traced curve changes a reading square to direction ν by δ·(sin ν, -cos ν).
 *
 * Terms: where the hold lies (2), how level the frame is (1), its scale (1), and what marks and lens leave over:
 * stretch along one axis and shear (2), perspective (2) and a radial cubic (1). The spread of each smooth term is
 * the stated drift at the curve's edge. Source of the terms: a plane seen through a wrong homography and an
 * unmodelled radial lens, to second and third order (Hartley and Zisserman, Multiple View Geometry, chapters 4
 * and 7); the spreads are judgement.
 */
import type { CurvePlace, CurvePlaces } from './curve-places.ts';

export interface DriftMode {
  /** Of its amplitude among the drifts; pictures of one stand share some. */
  column: number;
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
  /** Beside the field of a stand: the tracer's own grain. */
  standLocalSigmaM: 0.0005,
  driftSigmaM: 0.004,
  /** A frame levelled by a spirit level or a plumb line seen in the picture. */
  levelSigmaRad: 0.01,
  holdSigmaM: 0.005,
  scaleSigma: 0.004,
} as const;

/** A length between two taps: judgement, no source. */
export const tapSigmaM = 0.005;

/** A way in which the wall may be seen displaced, at a place in units of the frame. */
export type Shift = (x: number, y: number) => readonly [number, number];
export interface DriftShape {
  /** Standard deviation of the amplitude. */
  sigma: number;
  shift: Shift;
}

/** Where the hold was taken to be, off each way. */
export const holdShifts: readonly Shift[] = [() => [1, 0], () => [0, 1]];

/** What marks and lens leave over beyond level and scale, and a radial lens. */
const leftoverShifts: readonly Shift[] = [
  (x, y) => [x, -y],
  (x, y) => [y, x],
  (x, y) => [x * x, x * y],
  (x, y) => [x * y, y * y],
  (x, y) => [x * (x * x + y * y), y * (x * x + y * y)],
];

export function driftShapes(spread: DriftSpread, { halfM }: DriftFrame): DriftShape[] {
  return [
    { sigma: spread.levelSigmaRad * halfM, shift: (x, y) => [-y, x] },
    { sigma: spread.scaleSigma * halfM, shift: (x, y) => [x, y] },
    ...leftoverShifts.map((shift) => ({ sigma: spread.driftSigmaM, shift })),
  ];
}

/** Middle and half extent of all that the pictures show. */
interface DriftFrame {
  xM: number;
  yM: number;
  halfM: number;
}

export function driftFrame(cuts: readonly CurvePlaces[]): DriftFrame {
  const all = cuts.flatMap(({ places, hold }) => [...places, hold]);
  const [xM, yM] = [midOf(all.map((place) => place.xM)), midOf(all.map((place) => place.yM))];
  return { xM, yM, halfM: Math.max(...all.map((place) => Math.hypot(place.xM - xM, place.yM - yM))) };
}

/** Readings count from where the hold was taken to be; that this may be off is the shift's own part. */
export function driftPattern({ hold, places }: CurvePlaces, frame: DriftFrame, shift: Shift): Float64Array {
  const at = ({ xM, yM }: CurvePlace) => shift((xM - frame.xM) / frame.halfM, (yM - frame.yM) / frame.halfM);
  const pattern = new Float64Array(places.length + 1);
  let before = at(hold);
  let from: CurvePlace = hold;
  places.forEach((place, i) => {
    const here = at(place);
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
