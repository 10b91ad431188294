/**
 * The straight line of one span between two tapped rings, to sub-pixel.
 *
 * A strip along the chord is searched for the thin bright or dark band that most rows agree on, over all pairs of
 * offsets at its two ends; each row counts up to three times the noise, so that one glaring thing does not outvote
 * a faint line seen all along. The rows' own peaks near the winner are then fitted by a straight line with Tukey's
 * biweight. Rows where the blank would fill the strip are left out.
 * Assumption: the line is straight in the plane; the chord given may be curved by the lens.
 */
import type { Point } from '../camera/homography.ts';
import { lumaAt, type Pixels } from '../pixels.ts';
import { halfKernel } from '../trace/smooth.ts';

interface SpanChoice {
  /** How far a tap may be off, pixels. */
  reachPx: number;
  /** Share of the span left out at each ring. */
  endShare: number;
  /** Mean vote, in units of the noise, from which the line counts as seen. */
  leastVote: number;
}

const spanChoice: SpanChoice = { reachPx: 8, endShare: 0.06, leastVote: 1.6 };

export interface SpanLine {
  /** Offsets from the chord at its two ends, pixels along the normal (−ty, tx), and their standard error. */
  startPx: number;
  endPx: number;
  sigmaPx: number;
  /** Share of the rows that agree with it. */
  seenShare: number;
}

interface Rows {
  share: number[];
  /** Answers of the band filter across, row by row; NaN where the blank is. */
  values: Float32Array;
  columns: number;
  middle: number;
}

const stepPx = 0.5;

/** `chord` are places at even steps of the plane; `isHidden` tells where the blank or something else lies. */
export function spanLine(
  pixels: Pixels,
  chord: readonly Point[],
  isHidden: (x: number, y: number) => boolean,
  choice = spanChoice,
): SpanLine | undefined {
  const rows = rowsOf(pixels, chord, isHidden, choice);
  if (rows.share.length < 12) return undefined;
  const noise = noiseOf(rows.values);
  let best: { a: number; b: number; sign: number; vote: number } | undefined;
  for (const sign of [1, -1]) {
    for (let a = -choice.reachPx; a <= choice.reachPx; a += 2 * stepPx) {
      for (let b = -choice.reachPx; b <= choice.reachPx; b += 2 * stepPx) {
        const vote = voteFor(rows, a, b, sign, noise);
        if (vote > (best?.vote ?? 0)) best = { a, b, sign, vote };
      }
    }
  }
  if (best === undefined || best.vote < choice.leastVote) return undefined;
  return fitted(rows, best, noise);
}

/** Second derivative of a Gaussian of one pixel across, after averaging over three rows. */
function rowsOf(
  pixels: Pixels,
  chord: readonly Point[],
  isHidden: (x: number, y: number) => boolean,
  choice: SpanChoice,
): Rows {
  const middle = Math.round(choice.reachPx / stepPx) + 2;
  const columns = 2 * middle + 1;
  const kernel = halfKernel(1 / stepPx);
  const pad = kernel.length;
  const share: number[] = [];
  const values: number[] = [];
  const levels = new Float32Array(columns + 2 * pad);
  for (let i = 1; i + 1 < chord.length; i++) {
    const at = i / (chord.length - 1);
    if (at < choice.endShare || at > 1 - choice.endShare) continue;
    const dx = chord[i + 1].x - chord[i - 1].x;
    const dy = chord[i + 1].y - chord[i - 1].y;
    const norm = Math.hypot(dx, dy) || 1;
    const [nx, ny] = [-dy / norm, dx / norm];
    for (let k = 0; k < levels.length; k++) {
      const off = (k - pad - middle) * stepPx;
      levels[k] = lumaAt(pixels, chord[i].x + off * nx, chord[i].y + off * ny);
    }
    share.push(at);
    for (let k = 0; k < columns; k++) {
      const off = (k - middle) * stepPx;
      if (isHidden(chord[i].x + off * nx, chord[i].y + off * ny)) values.push(Number.NaN);
      else values.push(bandAt(levels, k + pad, kernel));
    }
  }
  return { share, values: Float32Array.from(values), columns, middle };
}

/** Positive for a dark band on light. */
function bandAt(levels: Float32Array, at: number, kernel: Float32Array): number {
  let sum = 0;
  let weights = 0;
  const variance = (1 / stepPx) ** 2;
  for (let k = 1 - kernel.length; k < kernel.length; k++) {
    const weight = kernel[Math.abs(k)] * ((k * k) / variance - 1);
    sum += weight * levels[at + k];
    weights += weight;
  }
  // The kernel is cut short: what is left of its sum would answer to plain brightness.
  return sum - weights * levels[at];
}

function noiseOf(values: Float32Array): number {
  const sizes = values
    .filter((value) => !Number.isNaN(value))
    .map(Math.abs)
    .sort();
  return Math.max(0.2, 1.4826 * (sizes[sizes.length >> 1] ?? 0));
}

function voteFor(rows: Rows, a: number, b: number, sign: number, noise: number): number {
  let sum = 0;
  let count = 0;
  for (let i = 0; i < rows.share.length; i++) {
    const column = Math.round((a + (b - a) * rows.share[i]) / stepPx) + rows.middle;
    const value = rows.values[i * rows.columns + column];
    if (Number.isNaN(value)) continue;
    count++;
    sum += Math.max(-1, Math.min(3, (sign * value) / noise));
  }
  return count < 0.3 * rows.share.length ? 0 : sum / count;
}

function fitted(
  rows: Rows,
  start: { a: number; b: number; sign: number },
  noise: number,
): SpanLine | undefined {
  let { a, b } = start;
  let scatter = 0.7;
  let used = 0;
  let spread = { s0: 0, s1: 0, s2: 0 };
  for (let round = 0; round < 6; round++) {
    const peaks = rows.share.flatMap((share, i) => {
      const at = peakNear(rows, i, a + (b - a) * share, start.sign, noise);
      return at === undefined ? [] : [{ share, at }];
    });
    if (peaks.length < 8) return undefined;
    let [s0, s1, s2, v0, v1] = [0, 0, 0, 0, 0];
    const off: number[] = [];
    for (const { share, at } of peaks) {
      const miss = at - a - (b - a) * share;
      off.push(Math.abs(miss));
      const ratio = miss / (4.7 * scatter);
      const weight = Math.abs(ratio) < 1 ? (1 - ratio * ratio) ** 2 : 0;
      s0 += weight;
      s1 += weight * share;
      s2 += weight * share * share;
      v0 += weight * at;
      v1 += weight * at * share;
    }
    const determinant = s0 * s2 - s1 * s1;
    if (determinant < 1e-9) return undefined;
    const slope = (s0 * v1 - s1 * v0) / determinant;
    a = (v0 - slope * s1) / s0;
    b = a + slope;
    scatter = Math.max(0.1, 1.4826 * off.sort((p, q) => p - q)[off.length >> 1]);
    used = peaks.length;
    spread = { s0, s1, s2 };
  }
  // Rows two pixels apart share little; the error at an end is that of the line there.
  const { s0, s1, s2 } = spread;
  const atEnd = Math.sqrt((s2 - 2 * s1 + s0) / Math.max(1e-9, s0 * s2 - s1 * s1));
  return {
    startPx: a,
    endPx: b,
    sigmaPx: Math.max(0.03, scatter * atEnd),
    seenShare: used / rows.share.length,
  };
}

/** The row's highest answer within 1.5 px of a place, to sub-pixel; undefined below the noise. */
function peakNear(rows: Rows, row: number, nearPx: number, sign: number, noise: number): number | undefined {
  const centre = Math.round(nearPx / stepPx) + rows.middle;
  let best = -1;
  let top = noise;
  for (let k = Math.max(1, centre - 3); k <= Math.min(rows.columns - 2, centre + 3); k++) {
    const value = sign * rows.values[row * rows.columns + k];
    if (value > top) {
      top = value;
      best = k;
    }
  }
  if (best < 0) return undefined;
  const before = sign * rows.values[row * rows.columns + best - 1];
  const after = sign * rows.values[row * rows.columns + best + 1];
  const bend = before - 2 * top + after;
  const shift = bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
  return Number.isNaN(shift) ? undefined : (best + shift - rows.middle) * stepPx;
}
