/**
 * One patch of the scan: is it a two-footed guide, and how straight is it?
 *
 * angle: between the two feet's axes seen from above. offset: distance between the feet's middles square to
 * the mean of the two axes. Both as magnitudes.
 */
import type { GreyImage } from '../pixels.ts';
import { type FootAxis, footAxis } from './foot-axis.ts';
import { footRuns, type Run } from './foot-runs.ts';
import { holesFilled, largestPatch, type Mask, opened } from './mask.ts';
import { type MiddlePath, middlePath } from './middle-path.ts';

export interface GuideLimits {
  leastLengthMm: number;
  mostLengthMm: number;
  leastFootMm: number;
  mostFootMm: number;
  leastWidthMm: number;
  mostWidthMm: number;
  /** Foot width over wire width at least. */
  leastFlattening: number;
  /** The wire's way over the straight way between the feet at least. */
  leastDetour: number;
}

export const guideLimits: GuideLimits = {
  leastLengthMm: 12,
  mostLengthMm: 60,
  leastFootMm: 2.5,
  mostFootMm: 20,
  leastWidthMm: 0.35,
  mostWidthMm: 4,
  leastFlattening: 1.12,
  leastDetour: 1.008,
};

/** Places and sizes in pixels of the difference image. */
export type GuideReading =
  | { kind: 'guide'; measured: MeasuredGuide }
  | { kind: 'wrong-size'; lengthMm: number }
  | { kind: 'touching'; lengthMm: number }
  | { kind: 'nothing'; why: string };

export interface MeasuredGuide {
  x: number;
  y: number;
  lengthPx: number;
  offsetPx: number;
  angleRad: number;
  /** 0..1: scatter of the edges, share of agreeing sections, likeness of the two feet. */
  quality: number;
}

/** Reads a window of the difference image around one patch; `perMm` is its resolution. */
export function measureGuide(
  difference: GreyImage,
  perMm: number,
  noise: number,
  limits = guideLimits,
): GuideReading {
  const mask = patchMask(difference, perMm, noise);
  if (mask === undefined) return { kind: 'nothing', why: 'too faint or too thin' };
  const path = middlePath(mask);
  const lengthMm = path.along[path.along.length - 1] / perMm;
  if (lengthMm < 0.3 * limits.leastLengthMm) return { kind: 'nothing', why: 'too short' };
  // Proportions first, so that a guide at the wrong resolution is still known as one.
  const scale =
    lengthMm >= limits.leastLengthMm && lengthMm <= 1.6 * limits.mostLengthMm
      ? perMm
      : (lengthMm * perMm) / 30;
  const runs = footRuns(path, limits.leastFootMm * scale, 0.6 * scale);
  const flattening = runs.footPx / Math.max(1, runs.wirePx);
  const wireMm = runs.wirePx / scale;
  const footMm = runs.footPx / scale;
  if (wireMm < limits.leastWidthMm || footMm > limits.mostWidthMm)
    return { kind: 'nothing', why: 'not of wire' };
  if (flattening < limits.leastFlattening) return { kind: 'nothing', why: 'no flattened ends' };
  if (path.branchPx > 2.5 * scale) {
    return runs.runs.length >= 2 && lengthMm > limits.leastLengthMm
      ? { kind: 'touching', lengthMm }
      : { kind: 'nothing', why: 'branched' };
  }
  if (runs.runs.length > 2) return { kind: 'touching', lengthMm };
  if (runs.runs.length < 2) return { kind: 'nothing', why: 'fewer than two feet' };
  if (detour(path, runs.runs) < limits.leastDetour) return { kind: 'nothing', why: 'straight' };
  const feet = runs.runs.map((run, i) => axisOf(difference, path, run, i === 1, runs.wirePx, runs.footPx));
  const [a, b] = feet;
  if (a === undefined || b === undefined) return { kind: 'nothing', why: 'no straight feet' };
  const footSizes = [a.lengthPx / scale, b.lengthPx / scale];
  if (Math.min(...footSizes) < limits.leastFootMm || Math.max(...footSizes) > limits.mostFootMm) {
    return { kind: 'nothing', why: 'feet too short or too long' };
  }
  if (Math.min(...footSizes) < 0.5 * Math.max(...footSizes)) return { kind: 'nothing', why: 'unlike feet' };
  const measured = compared(a, b);
  const overallMm = measured.lengthPx / perMm;
  if (overallMm < limits.leastLengthMm || overallMm > limits.mostLengthMm) {
    return { kind: 'wrong-size', lengthMm: overallMm };
  }
  if (measured.angleRad > 0.8) return { kind: 'nothing', why: 'feet at right angles' };
  return { kind: 'guide', measured };
}

/** The patch at half its own level, highlights filled, hairs removed. */
function patchMask(difference: GreyImage, perMm: number, noise: number): Mask | undefined {
  const { width, height, values } = difference;
  const strong = Float32Array.from(values.filter((value) => value > Math.max(10, 6 * noise))).sort();
  if (strong.length < perMm * perMm) return undefined;
  const level = Math.max(10, 6 * noise, 0.42 * strong[Math.floor(0.6 * strong.length)]);
  const raw: Mask = { width, height, inside: Uint8Array.from(values, (value) => (value > level ? 1 : 0)) };
  const filled = holesFilled(raw, 1.5 * perMm * perMm);
  const open = opened(filled, 0.16 * perMm);
  if (!open.inside.includes(1)) return undefined;
  return largestPatch(open);
}

/** The wire's way over the straight distance between the feet's inner ends. */
function detour(path: MiddlePath, runs: readonly Run[]): number {
  const at = (along: number): number => {
    let i = 0;
    while (i < path.along.length - 1 && path.along[i] < along) i++;
    return i;
  };
  const i = at(runs[0].to);
  const j = at(runs[1].from);
  const straight = Math.hypot(path.x[j] - path.x[i], path.y[j] - path.y[i]);
  return (path.along[j] - path.along[i]) / Math.max(1, straight);
}

function axisOf(
  difference: GreyImage,
  path: MiddlePath,
  run: Run,
  reversed: boolean,
  wirePx: number,
  footPx: number,
): FootAxis | undefined {
  // The inner part of the run: its ends may lean into the wire or a corner.
  const length = run.to - run.from;
  let first = -1;
  let last = -1;
  for (let i = 0; i < path.along.length; i++) {
    if (first < 0 && path.along[i] >= run.from + 0.15 * length) first = i;
    if (path.along[i] <= run.to - 0.15 * length) last = i;
  }
  const [from, to] = reversed ? [last, first] : [first, last];
  const norm = Math.hypot(path.x[to] - path.x[from], path.y[to] - path.y[from]);
  if (norm < 4) return undefined;
  const guess = {
    x: (path.x[from] + path.x[to]) / 2,
    y: (path.y[from] + path.y[to]) / 2,
    dx: (path.x[to] - path.x[from]) / norm,
    dy: (path.y[to] - path.y[from]) / norm,
    lengthPx: length,
  };
  return footAxis(difference, guess, wirePx, footPx);
}

function compared(a: FootAxis, b: FootAxis): MeasuredGuide {
  // Both axes point to the wire, so the second is turned to run the same way.
  const [bx, by] = [-b.dx, -b.dy];
  const angleRad = Math.abs(Math.atan2(a.dx * by - a.dy * bx, a.dx * bx + a.dy * by));
  const norm = Math.hypot(a.dx + bx, a.dy + by) || 1;
  const meanX = (a.dx + bx) / norm;
  const meanY = (a.dy + by) / norm;
  const offsetPx = Math.abs((b.x - a.x) * -meanY + (b.y - a.y) * meanX);
  const lengthPx = Math.abs((b.x - a.x) * meanX + (b.y - a.y) * meanY) + (a.lengthPx + b.lengthPx) / 2;
  const scatter = Math.max(a.scatterPx / a.widthPx, b.scatterPx / b.widthPx);
  const alike = Math.min(a.lengthPx, b.lengthPx) / Math.max(a.lengthPx, b.lengthPx);
  return {
    x: (a.x + b.x) / 2,
    y: (a.y + b.y) / 2,
    lengthPx,
    offsetPx,
    angleRad,
    quality: Math.min(a.agreeing, b.agreeing) * alike * Math.exp(-8 * scatter),
  };
}
