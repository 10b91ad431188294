/**
 * Pictures of one stand as their pixels: a telephone before a wall with marks, the blank clamped once, weights hung
 * one after the other. The axis is seen by a camera of its own (test/render/camera.ts), the tracer's leftover is put on
 * it in pixels, and the tracer's own camera fit (src/image/camera) brings it back to the wall through marks whose
 * told places are wrong. What rendered pictures give after tracing, a thousand times as fast.
 */

import { seededNormal, seededRandom } from '../../src/engine/numerics/seeded-random.ts';
import type { FitCurveSetup } from '../../src/engine/stiffness/request.ts';
import { cameraBackProject } from '../../src/image/camera/camera-model.ts';
import { marksToCamera } from '../../src/image/camera/marks-check.ts';
import { type Camera, cameraChoice, cameraFor } from '../render/camera.ts';
import { randomFrom } from '../render/random.ts';
import { inWords } from './in-words.ts';
import { type Curve, placeOn, type TrueBlank, trueCurve } from './simulated-bench.ts';
import { type Swing, swungCurve } from './swung-curve.ts';

export interface StandErrors {
  /** Standard deviations: each told place of a mark each way, a mark's tap, taps of butt and tip. */
  toldM: number;
  markTapPx: number;
  /** The marks are tapped once for all pictures, or anew in each. */
  tappedOnce: boolean;
  endTapPx: number;
  /** Tracer's unevenness square to the curve, which holds on over 3 cm. */
  unevenPx: number;
  /** The clamp's angle off the stated one. */
  tiltRad: number;
  /** The frame of the marks off the plumb line: its spread, or so much. */
  levelRad: number;
  levelFixedRad?: number;
  marks: number;
  widthPx: number;
}
export const commonStand: StandErrors = {
  toldM: 0.002,
  markTapPx: 1,
  tappedOnce: false,
  endTapPx: 1,
  unevenPx: 0.4,
  tiltRad: (0.7 * Math.PI) / 180,
  levelRad: 0,
  marks: 6,
  widthPx: 4000,
};

/** What hangs, and what a slip of the hand did before this picture. */
export interface StandPicture {
  hungKg: number;
  /** Another blank than the stand's. */
  blank?: TrueBlank;
  /** It still swings. */
  swing?: Swing;
  clampFromTipM?: number;
  turnedRad?: number;
}
/** Things that go wrong before picture `from`. */
export interface StandSlips {
  /** Bumped; `stale`: the marks' taps are those of the first picture. */
  cameraMoved?: { from: number; yawRad: number; pitchRad: number; rollRad: number; stale: boolean };
  clampSlipped?: { from: number; byRad: number };
}

interface Place {
  x: number;
  y: number;
}

export interface Stand {
  setups: FitCurveSetup[];
  curves: Curve[];
  /** True clamp angle off the stated one. */
  tiltRad: number;
  /** Marks that the camera fit left out, in all pictures. */
  leftOut: number;
}

export function photographStand(
  blank: TrueBlank,
  pictures: readonly StandPicture[],
  seed: number,
  errors: StandErrors = commonStand,
  slips: StandSlips = {},
): Stand {
  const normal = seededNormal(seededRandom(seed));
  const tiltRad = errors.tiltRad * normal();
  const level = errors.levelFixedRad ?? errors.levelRad * normal();
  const seen = pictures.map(({ hungKg, clampFromTipM, turnedRad, swing, ...picture }, i) => {
    const slip = slips.clampSlipped && i >= slips.clampSlipped.from ? slips.clampSlipped.byRad : 0;
    const shown = picture.blank ?? blank;
    const load = {
      buttAngleRad: tiltRad + slip,
      clampFromTipM: clampFromTipM ?? shown.lengthM,
      turnedRad: turnedRad ?? 0,
      hung: hungKg > 0 ? [{ fromTipM: 0, massKg: hungKg }] : [],
    };
    return swing ? swungCurve(shown, load, swing) : { curve: trueCurve(shown, load), blurM: undefined };
  });
  const curves = seen.map(({ curve }) => curve);
  const random = randomFrom(seed + 5);
  const frame = frameAround(curves, random);
  const heightPx = 0.75 * errors.widthPx;
  const view = cameraChoice(random, errors.widthPx, heightPx, frame);
  const wide = { ...frame, left: frame.left - 0.05, right: frame.right + 0.05 };
  const camera = cameraFor({ ...view, frame: wide });
  const marks = markPlaces(random, frame, errors.marks);
  const told = marks.map(({ x, y }) => ({ x: x + errors.toldM * normal(), y: y + errors.toldM * normal() }));
  const tapsOf = (eye: Camera) =>
    marks.map((place) => {
      const at = eye.project(place);
      return { x: at.x + errors.markTapPx * normal(), y: at.y + errors.markTapPx * normal() };
    });
  const once = tapsOf(camera);
  let leftOut = 0;
  const setups = curves.map((curve, i): FitCurveSetup => {
    const moved = slips.cameraMoved && i >= slips.cameraMoved.from ? slips.cameraMoved : undefined;
    const eye = moved
      ? turned(camera, moved, { x: (errors.widthPx - 1) / 2, y: (heightPx - 1) / 2 })
      : camera;
    const taps = (moved ? moved.stale : errors.tappedOnce) ? once : tapsOf(eye);
    const answer = marksToCamera(
      taps.map((pixel, k) => ({ pixel, plane: told[k] })),
      { widthPx: errors.widthPx, heightPx },
    );
    if (answer.status === 'refused') throw new Error(inWords(answer.findings[0]));
    leftOut += answer.leftOut.length;
    const { fit } = answer;
    const pixels = seenAxis(curve, eye, normal, errors, seen[i].blurM);
    const points = pixels.map((pixel) => {
      const { x, y } = cameraBackProject(fit.camera, pixel);
      return {
        xM: x * Math.cos(level) - y * Math.sin(level),
        yM: x * Math.sin(level) + y * Math.cos(level),
        sigmaM: fit.sigmaAtM(pixel),
        px: [pixel.x, pixel.y] as const,
      };
    });
    const { hungKg, clampFromTipM, turnedRad } = pictures[i];
    return {
      kind: 'curve',
      nominalAngleRad: 0,
      tiltSigmaRad: (0.7 * Math.PI) / 180,
      ...(clampFromTipM === undefined ? {} : { clampFromTipM }),
      ...(turnedRad === undefined ? {} : { turnedRad }),
      tests: [{ hung: hungKg > 0 ? [{ fromTipM: 0, massKg: hungKg }] : [], points }],
    };
  });
  return { setups, curves, tiltRad, leftOut };
}

/** Turned where it stands: pixels move by focal length times the angles, and about the middle by the roll. */
function turned(
  { project, scaleAt, ...lens }: Camera,
  { yawRad, pitchRad, rollRad }: { yawRad: number; pitchRad: number; rollRad: number },
  middle: Place,
): Camera {
  return {
    ...lens,
    scaleAt,
    project(place) {
      const at = project(place);
      const [x, y] = [(at.x - middle.x) / lens.focalPx, (at.y - middle.y) / lens.focalPx];
      const [u, v] = [x - rollRad * y, y + rollRad * x];
      const q = (base: number, turn: number) => (base + Math.tan(turn)) / (1 - base * Math.tan(turn));
      return { x: middle.x + lens.focalPx * q(u, yawRad), y: middle.y + lens.focalPx * q(v, pitchRad) };
    },
  };
}

function frameAround(curves: readonly Curve[], random: { between(a: number, b: number): number }) {
  const xs = curves.flatMap(({ xM }) => [...xM]);
  const ys = curves.flatMap(({ yM }) => [...yM]);
  return {
    left: Math.min(...xs) - random.between(0.12, 0.3),
    right: Math.max(...xs) + random.between(0.08, 0.3),
    bottom: Math.min(...ys) - random.between(0.1, 0.4),
    top: Math.max(...ys) + random.between(0.08, 0.3),
  };
}

/** Corners of the frame first, then the middles of its edges. */
function markPlaces(
  random: { between(a: number, b: number): number },
  { left, right, bottom, top }: { left: number; right: number; bottom: number; top: number },
  count: number,
): Place[] {
  const jitter = () => random.between(-0.02, 0.02);
  const places = [
    [left + 0.04, bottom + 0.04],
    [right - 0.04, bottom + 0.04],
    [right - 0.04, top - 0.04],
    [left + 0.04, top - 0.04],
    [(left + right) / 2, top - 0.04],
    [(left + right) / 2, bottom + 0.04],
    [left + 0.04, (bottom + top) / 2],
    [right - 0.04, (bottom + top) / 2],
  ];
  return places.slice(0, count).map(([x, y]) => ({ x: x + jitter(), y: y + jitter() }));
}

/** A place a centimetre, hold to tip, moved square to the curve by the tracer's unevenness; taps cut the ends. */
function seenAxis(
  curve: Curve,
  camera: Camera,
  normal: () => number,
  errors: StandErrors,
  blurM: (fromTipM: number) => number = () => 0,
): Place[] {
  const lengthM = curve.fromTipM[0];
  const scale = camera.scaleAt({ x: 0.5 * lengthM, y: 0 });
  const [holdTap, tipTap] = [normal(), normal()].map((n) => (n * errors.endTapPx) / scale);
  const count = Math.round(lengthM / 0.01);
  const uneven = unevenness(lengthM, normal, errors.unevenPx);
  const at = (fromHold: number): Place => {
    const place = placeOn(curve, lengthM - fromHold);
    return camera.project({ x: place.xM, y: place.yM });
  };
  return Array.from({ length: count + 1 }, (_, i) => {
    const fromHold =
      Math.max(0, holdTap) + ((lengthM - Math.max(0, holdTap) - Math.max(0, tipTap)) * i) / count;
    const here = at(fromHold);
    const [before, after] = [at(Math.max(0, fromHold - 0.002)), at(Math.min(lengthM, fromHold + 0.002))];
    const along = Math.hypot(after.x - before.x, after.y - before.y);
    const off = uneven(fromHold) * (1 + blurGrain * scale * blurM(lengthM - fromHold));
    return {
      x: here.x - (off * (after.y - before.y)) / along,
      y: here.y + (off * (after.x - before.x)) / along,
    };
  });
}

/** An edge smeared over so many pixels is found so much the worse; judgement. */
const blurGrain = 0.5;

function unevenness(lengthM: number, normal: () => number, sigma: number): (alongM: number) => number {
  const stepM = 0.03;
  const values = Array.from({ length: Math.ceil(lengthM / stepM) + 2 }, () => sigma * normal());
  return (alongM) => {
    const i = Math.floor(alongM / stepM);
    const t = alongM / stepM - i;
    return ((1 - t) * values[i] + t * values[i + 1]) / Math.sqrt((1 - t) ** 2 + t * t);
  };
}
