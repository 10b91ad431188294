/**
 * One patch of the scan: is it a two-footed guide, and how straight is it?
 *
 * angle: between the two feet's axes seen from above. offset: distance between the feet's middles square to
 * the mean of the two axes. Both as magnitudes.
 */
import type { GreyImage } from '../pixels.ts';
import { type FootAxis, footAxis } from './foot-axis.ts';
import { type FootRuns, footRuns, type Run } from './foot-runs.ts';
import { closed, holesFilled, largestPatch, type Mask, opened } from './mask.ts';
import { type MiddlePath, middlePath } from './middle-path.ts';

interface GuideLimits {
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

/** What is larger than this across is no guide even where the resolution is wrong: as far as proportions are read. */
export const largestMm = (limits: GuideLimits): number => 1.6 * limits.mostLengthMm;

export const guideLimits: GuideLimits = {
  /** The smallest snakes of a fly rod's tip are about 10.5 mm over both feet: common practice, no source. */
  leastLengthMm: 10,
  mostLengthMm: 60,
  leastFootMm: 2.5,
  mostFootMm: 20,
  leastWidthMm: 0.35,
  mostWidthMm: 4,
  leastFlattening: 1.07,
  leastDetour: 1.008,
};

/** Places and sizes in pixels of the difference image. */
export type GuideReading =
  | { kind: 'guide'; measured: MeasuredGuide }
  | { kind: 'wrong-size'; lengthMm: number }
  | { kind: 'touching'; lengthMm: number }
  | { kind: 'too-large'; acrossMm: number }
  | { kind: 'nothing'; why: string };

interface MeasuredGuide {
  x: number;
  y: number;
  lengthPx: number;
  offsetPx: number;
  angleRad: number;
  /** 0..1: scatter of the edges, share of agreeing sections, likeness of the two feet. */
  quality: number;
}

/** The difference from the ground in one window, at two resolutions with the same top left corner. */
interface GuideWindow {
  /** For edges to sub-pixel; results are in its pixels. */
  fine: GreyImage;
  /** For the shape; one pixel is `ratio` fine ones. */
  coarse: GreyImage;
  ratio: number;
  finePerMm: number;
  noise: number;
}

/** Reads what lies in a window round one patch of the scan. */
export function measureGuide(window: GuideWindow, limits = guideLimits): GuideReading {
  const raw = rawMask(window.coarse, window.finePerMm / window.ratio, window.noise);
  if (raw === undefined) return { kind: 'nothing', why: 'too faint' };
  const first = readMask(window, raw, 'highlights', limits);
  if (first.kind === 'guide') return first;
  const second = readMask(window, raw, 'hairs', limits);
  return second.kind === 'guide' ? second : first;
}

/**
 * Reads the patch after mending: a glint as bright as the ground splits the wire into two rims, which filling
 * first repairs; a hair across the wire encloses ground, which removing hairs first frees.
 */
function readMask(
  window: GuideWindow,
  raw: Mask,
  mendFirst: 'highlights' | 'hairs',
  limits: GuideLimits,
): GuideReading {
  const perMm = window.finePerMm / window.ratio;
  const mask = mended(raw, perMm, mendFirst);
  if (mask === undefined) return { kind: 'nothing', why: 'too thin' };
  const path = middlePath(mask);
  const lengthMm = path.along[path.along.length - 1] / perMm;
  if (lengthMm < 0.3 * limits.leastLengthMm) return { kind: 'nothing', why: 'too short' };
  // Proportions first, so that a guide at the wrong resolution is still known as one.
  const usual = lengthMm >= limits.leastLengthMm && lengthMm <= largestMm(limits);
  const scale = usual ? perMm : (lengthMm * perMm) / 30;
  const runs = footRuns(path, limits.leastFootMm * scale, 1.5 * scale);
  const unlike = notOfGuide(path, runs, scale, limits);
  if (unlike !== undefined) return { kind: 'nothing', why: unlike };
  if (path.branchPx > 2.5 * scale || runs.runs.length > 2) {
    return lengthMm > limits.leastLengthMm
      ? { kind: 'touching', lengthMm }
      : { kind: 'nothing', why: 'branched' };
  }
  const [a, b] = runs.runs.map((run, i) => axisOf(window, path, run, i === 1, runs));
  if (a === undefined || b === undefined) return { kind: 'nothing', why: 'no straight feet' };
  return judged(a, b, window.finePerMm, scale * window.ratio, limits);
}

/** Why a patch is no guide, by its proportions; undefined if it may be one, or several that touch. */
function notOfGuide(
  path: MiddlePath,
  found: FootRuns,
  scale: number,
  limits: GuideLimits,
): string | undefined {
  const wireMm = found.wirePx / scale;
  const footMm = found.footPx / scale;
  if (wireMm < limits.leastWidthMm || footMm > limits.mostWidthMm) return 'not of wire';
  if (footMm < limits.leastFlattening * wireMm) return 'no flattened ends';
  if (found.runs.length < 2) return 'fewer than two feet';
  if (detour(path, found.runs) < limits.leastDetour) return 'straight';
  return undefined;
}

function judged(a: FootAxis, b: FootAxis, perMm: number, scale: number, limits: GuideLimits): GuideReading {
  const footSizes = [a.lengthPx / scale, b.lengthPx / scale];
  const [short, long] = [Math.min(...footSizes), Math.max(...footSizes)];
  if (short < limits.leastFootMm || long > limits.mostFootMm) {
    return { kind: 'nothing', why: 'feet too short or too long' };
  }
  if (short < 0.5 * long) return { kind: 'nothing', why: 'unlike feet' };
  const measured = compared(a, b);
  if (measured.angleRad > 0.8) return { kind: 'nothing', why: 'feet across each other' };
  const lengthMm = measured.lengthPx / perMm;
  if (lengthMm < limits.leastLengthMm || lengthMm > limits.mostLengthMm)
    return { kind: 'wrong-size', lengthMm };
  return { kind: 'guide', measured };
}

/** What differs by about half as much as the patch itself. */
function rawMask(difference: GreyImage, perMm: number, noise: number): Mask | undefined {
  const { width, height, values } = difference;
  const floor = Math.max(10, 6 * noise);
  const strong = values.filter((value) => value > floor).sort();
  if (strong.length < perMm * perMm) return undefined;
  const level = Math.max(floor, 0.42 * strong[Math.floor(0.6 * strong.length)]);
  return { width, height, inside: Uint8Array.from(values, (value) => (value > level ? 1 : 0)) };
}

function mended(raw: Mask, perMm: number, first: 'highlights' | 'hairs'): Mask | undefined {
  const hairMm = 0.16;
  const filled = (mask: Mask): Mask => holesFilled(closed(mask, 0.13 * perMm), 0.45 * perMm);
  const mask =
    first === 'highlights' ? opened(filled(raw), hairMm * perMm) : filled(opened(raw, hairMm * perMm));
  return mask.inside.includes(1) ? largestPatch(mask) : undefined;
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
  window: GuideWindow,
  path: MiddlePath,
  run: Run,
  reversed: boolean,
  found: FootRuns,
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
  const { ratio } = window;
  const toFine = (at: number): number => (at + 0.5) * ratio - 0.5;
  const guess = {
    x: toFine((path.x[from] + path.x[to]) / 2),
    y: toFine((path.y[from] + path.y[to]) / 2),
    dx: (path.x[to] - path.x[from]) / norm,
    dy: (path.y[to] - path.y[from]) / norm,
    lengthPx: length * ratio,
  };
  return footAxis(window.fine, guess, found.wirePx * ratio, found.footPx * ratio);
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
