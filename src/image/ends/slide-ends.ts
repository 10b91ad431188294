import { type Camera, cameraBackProject, cameraProject } from '../camera/camera-model.ts';
import type { Point } from '../camera/homography.ts';
import type { Pixels } from '../pixels.ts';
import { type Centreline, centrelineOf, centrelineSmoothed } from '../trace/centreline.ts';
import { stripAlong, stripMean } from '../trace/strip.ts';
import type { EndsKnown } from './ends-known.ts';
import { spreadOf, tipNear } from './tip-near.ts';

export interface SlideChoice {
  /** Weight of the change across the line at an end, 0..1 of the largest near it, beside half the squared misses. */
  changeWeight: number;
  /** Of a row that shows the blank before its tip and none after it. */
  seenWeight: number;
  /** Standard error of the length along the line: the told one's, and the marks' scale as a share. */
  lengthM: number;
  lengthShare: number;
  /** Waves of the path shorter than this are steps from point to point, in pixels of the reduced picture. */
  wavePx: number;
  /** The path's ends may lie so far from the blank's, as a share of the length: a jump onto a stray point is left out. */
  jumpShare: number;
}

export const slideChoice: SlideChoice = {
  changeWeight: 8,
  seenWeight: 1.5,
  lengthM: 0.0035,
  lengthShare: 0.0018,
  wavePx: 80,
  jumpShare: 0.06,
};

export interface SlidEnds {
  butt: Point;
  tip: Point;
  /** How much the picture across the line changes at the butt, over the typical change near it. */
  change: number;
  /** How well what is seen and the length tell the tip; infinite where no blank stands out before it, or it goes on. */
  tipSigmaM: number;
  goesOn: boolean;
  /** In standard deviations: of the butt from the clamp's place, of the length between the ends from the told one. */
  clampMiss: number;
  lengthMiss: number;
}

/** Both ends together: where the picture changes, near the clamp's place, and the length apart. */
export function slideEnds(
  pixels: Pixels,
  camera: Camera,
  { clamp, lengthM }: EndsKnown,
  path: readonly Point[],
  factor: number,
  choice = slideChoice,
): SlidEnds {
  const sigmaM = Math.hypot(choice.lengthM, choice.lengthShare * lengthM);
  const reachM = { butt: 3 * clamp.sigmaM + 0.004, tip: 3 * clamp.sigmaM + 0.004 + 3 * sigmaM };
  const smooth = centrelineSmoothed(centrelineOf(withoutJumps(path, 30 * factor), 1), choice.wavePx * factor);
  const line = lengthened(smooth, camera, reachM.tip + choice.jumpShare * lengthM);
  const along = planeLengths(line, camera);
  const at = nearestTo(line, cameraProject(camera, { x: clamp.atM[0], y: clamp.atM[1] }));
  const butt = changesNear(pixels, line, along, {
    atM: along[at],
    reachM: reachM.butt,
    factor,
  });
  const tip = tipNear(pixels, line, along, { atM: along[at] + lengthM, reachM: reachM.tip, factor });
  let best = { score: -Infinity, i: 0, j: 0 };
  const byTip = new Float64Array(tip.score.length).fill(-Infinity);
  for (let i = 0; i < butt.change.length; i++) {
    const buttM = along[butt.first + i];
    const off = (buttM - along[at]) / clamp.sigmaM;
    for (let j = 0; j < tip.score.length; j++) {
      const miss = (along[tip.first + j] - buttM - lengthM) / sigmaM;
      const score =
        choice.changeWeight * butt.change[i] +
        choice.seenWeight * tip.score[j] -
        0.5 * (off * off + miss * miss);
      byTip[j] = Math.max(byTip[j], score);
      if (score > best.score) best = { score, i, j };
    }
  }
  const [buttM, tipM] = [along[butt.first + best.i], along[tip.first + best.j]];
  const goesOn = tip.goesOn(best.j);
  return {
    butt: placeOf(line, butt.first + best.i),
    tip: placeOf(line, tip.first + best.j),
    goesOn,
    clampMiss: (buttM - along[at]) / clamp.sigmaM,
    lengthMiss: (tipM - buttM - lengthM) / sigmaM,
    change: butt.change[best.i] / butt.typical,
    tipSigmaM:
      tip.isSeen && !goesOn ? spreadOf(along.subarray(tip.first, tip.first + byTip.length), byTip) : Infinity,
  };
}

function placeOf(line: Centreline, i: number): Point {
  return { x: line.x[i], y: line.y[i] };
}

/** At the clamp and at the tip a path may jump onto a stray point that happens to lie where it is wanted. */
function withoutJumps(path: readonly Point[], mostPx: number): readonly Point[] {
  const jumps = (i: number) => Math.hypot(path[i].x - path[i - 1].x, path[i].y - path[i - 1].y) > mostPx;
  const first = jumps(1) ? 1 : 0;
  const last = path.length - (jumps(path.length - 1) ? 1 : 0);
  return last - first > 8 ? path.slice(first, last) : path;
}

/** Straight on at both ends: the clamp and the tip may lie a little beyond what was followed. */
function lengthened(line: Centreline, camera: Camera, byM: number): Centreline {
  const places = Array.from(line.x, (x, i) => ({ x, y: line.y[i] }));
  const inner = places.slice(3, -3);
  const ahead = (from: Point, back: Point): Point[] => {
    const norm = Math.hypot(from.x - back.x, from.y - back.y) || 1;
    const step = { x: (from.x - back.x) / norm, y: (from.y - back.y) / norm };
    const [a, b] = [from, { x: from.x + step.x, y: from.y + step.y }].map((one) =>
      cameraBackProject(camera, one),
    );
    const count = Math.ceil(byM / Math.hypot(b.x - a.x, b.y - a.y));
    return Array.from({ length: count }, (_, k) => ({
      x: from.x + (k + 1) * step.x,
      y: from.y + (k + 1) * step.y,
    }));
  };
  const back = Math.min(16, inner.length - 1);
  const before = ahead(inner[0], inner[back]).reverse();
  const after = ahead(inner[inner.length - 1], inner[inner.length - 1 - back]);
  return centrelineOf([...before, ...inner, ...after], 1);
}

function planeLengths(line: Centreline, camera: Camera): Float64Array {
  const along = new Float64Array(line.x.length);
  let last = cameraBackProject(camera, placeOf(line, 0));
  for (let i = 1; i < along.length; i++) {
    const here = cameraBackProject(camera, placeOf(line, i));
    along[i] = along[i - 1] + Math.hypot(here.x - last.x, here.y - last.y);
    last = here;
  }
  return along;
}

function nearestTo(line: Centreline, { x, y }: Point): number {
  let best = 0;
  for (let i = 1; i < line.x.length; i++) {
    const away = (k: number) => Math.hypot(line.x[k] - x, line.y[k] - y);
    if (away(i) < away(best)) best = i;
  }
  return best;
}

interface Changes {
  /** Index along the line of the first change. */
  first: number;
  /** 1 at the largest. */
  change: Float64Array;
  typical: number;
}

/** How far off the line, in pixels of the reduced picture, the blank and what is beside it are looked at. */
const bands = { inside: 1.5, beside: [6, 9] } as const;

/**
 * How much the blank's contrast to what is beside it differs between just before and just after each place near `atM`,
 * and what is beside it as well, for a grip is wide.
 */
function changesNear(
  pixels: Pixels,
  line: Centreline,
  along: Float64Array,
  { atM, reachM, factor }: { atM: number; reachM: number; factor: number },
): Changes {
  const width = 8 * factor;
  const index = (m: number) => along.findIndex((one) => one >= m);
  const first = Math.max(width, index(atM - reachM));
  const beyond = index(atM + reachM);
  const last = Math.min(along.length - 1 - width, beyond < 0 ? along.length : beyond);
  const [from, to] = [first - width, last + width + 1];
  const part = { stepPx: line.stepPx, x: line.x.slice(from, to), y: line.y.slice(from, to) };
  const { inside, beside } = bands;
  const strip = stripAlong(pixels, part, beside[1] * factor, 0.5);
  const [near, far] = beside.map((off) => off * factor);
  const rows = Array.from({ length: strip.rows }, (_, u) => ({
    inside: stripMean(strip, u, -inside * factor, inside * factor),
    left: stripMean(strip, u, -far, -near),
    right: stripMean(strip, u, near, far),
  }));
  const contrast = runningSums(rows.map((row) => row.inside - 0.5 * (row.left + row.right)));
  const sides = [rows.map((row) => row.left), rows.map((row) => row.right)].map(runningSums);
  const step = (sums: Float64Array, u: number) => 2 * sums[u] - sums[u - width] - sums[u + width];
  const raw = new Float64Array(Math.max(1, last - first + 1));
  for (let i = 0; i < raw.length && i + 2 * width < strip.rows; i++) {
    const fade = step(contrast, i + width);
    const [left, right] = sides.map((sums) => step(sums, i + width));
    // a grip is seen on both sides, a shadow on one
    const around = left * right > 0 ? Math.min(Math.abs(left), Math.abs(right)) : 0;
    raw[i] = Math.hypot(fade, around);
  }
  const largest = Math.max(...raw) || 1;
  return {
    first,
    change: peaksOf(raw, width >> 1).map((one) => one / largest),
    typical: Math.max(0.02, raw.slice().sort()[raw.length >> 1] / largest),
  };
}

/** Nothing but the largest within `reach` each way: beside a step half of it is seen as well. */
function peaksOf(values: Float64Array, reach: number): Float64Array {
  return values.map((value, i) => {
    for (let k = Math.max(0, i - reach); k <= Math.min(values.length - 1, i + reach); k++) {
      if (values[k] > value) return 0;
    }
    return value;
  });
}

/** Entry u is the sum of all before it. */
function runningSums(values: readonly number[]): Float64Array {
  const sums = new Float64Array(values.length + 1);
  for (let i = 0; i < values.length; i++) sums[i + 1] = sums[i] + values[i];
  return sums;
}
