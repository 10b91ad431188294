import type { Point } from '../camera/homography.ts';
import type { Pixels } from '../pixels.ts';
import {
  type Centreline,
  centrelineOf,
  centrelineShifted,
  centrelineSmoothed,
  whittaker,
} from './centreline.ts';
import { followEdges } from './follow-edges.ts';
import { stripAlong, stripSlope } from './strip.ts';
import { type Taper, taperVote } from './taper.ts';

export interface RefineChoice {
  stepPx: number;
  /** Waves shorter than this are noise of the first path, and of the edges. */
  pathWavePx: number;
  edgeWavePx: number;
  /** Widest half-width looked for. */
  mostHalfPx: number;
  /** The first path is good to half the width and this. */
  slackPx: number;
  /** A place where no edge was seen is off by so much of its way to one where there was, and by no more than `mostBridgePx`. */
  bridgeShare: number;
  mostBridgePx: number;
}

export const refineChoice: RefineChoice = {
  stepPx: 2,
  pathWavePx: 160,
  edgeWavePx: 160,
  mostHalfPx: 12,
  slackPx: 2,
  bridgeShare: 0.04,
  mostBridgePx: 12,
};

export interface RefinedCentreline {
  line: Centreline;
  halfPx: Float64Array;
  /** Standard error of the middle square to the curve, pixels. */
  sigmaPx: Float64Array;
  /** Share of the length where both edges were seen. */
  seenShare: number;
  /** 0..1 at each place: how well the edges were seen. */
  weight: Float64Array;
}

/** Turns a path good to a few pixels into the sub-pixel middle of the blank's two edges. */
export function refineCentreline(
  pixels: Pixels,
  path: readonly Point[],
  butt: Point,
  tip: Point,
  choice = refineChoice,
): RefinedCentreline {
  const whole = endedAt(path, butt, tip);
  let line = centrelineSmoothed(centrelineOf(whole, choice.stepPx), choice.pathWavePx);
  let taper: Taper | undefined;
  let last: Smooth | undefined;
  for (const reachPx of [choice.mostHalfPx, 4, 2.5]) {
    const strip = stripAlong(pixels, line, reachPx + choice.mostHalfPx + 4, 0.5);
    const slope = stripSlope(strip, 0.9, 12 / choice.stepPx);
    taper = taperVote(slope, {
      reachPx,
      slackPx: choice.slackPx,
      leastHalfPx: 0.75,
      mostHalfPx: choice.mostHalfPx,
      stepHalfPx: 0.25,
      swapFactor: 1.08,
    });
    const followed = followEdges(slope, taper, {
      reachPx,
      moveCost: 0.6,
      polarityCost: 6,
      astrayCost: 0.2,
      slackPx: choice.slackPx,
    });
    last = robustSmooth(followed.offsetPx, followed.weight, choice.edgeWavePx / choice.stepPx);
    line = centrelineShifted(line, last.values);
  }
  const bridged = bridgeSigma(last!.weight, choice);
  const seen = last!.weight.reduce((count, weight) => count + (weight > 0.3 ? 1 : 0), 0);
  return {
    line,
    halfPx: taper!.halfPx,
    sigmaPx: last!.sigmaPx.map((sigma, i) => Math.hypot(sigma, bridged[i])),
    seenShare: seen / last!.weight.length,
    weight: last!.weight,
  };
}

/**
 * Lets the path begin and end abreast of the taps: a tap tells how far the blank goes, hardly where its middle
 * is, so its part square to the path is dropped.
 */
function endedAt(path: readonly Point[], butt: Point, tip: Point): Point[] {
  const middle = path.slice();
  const ended = (from: Point[], tap: Point): Point[] => {
    // Leave the first few points to the tap: the path may start beside it or beyond it.
    while (from.length > 8 && Math.hypot(from[0].x - tap.x, from[0].y - tap.y) < 16) from.shift();
    const near = from[0];
    const on = from[Math.min(4, from.length - 1)];
    const dx = near.x - on.x;
    const dy = near.y - on.y;
    const norm = Math.hypot(dx, dy) || 1;
    const ahead = ((tap.x - near.x) * dx + (tap.y - near.y) * dy) / norm;
    return ahead > 0 ? [{ x: near.x + (dx / norm) * ahead, y: near.y + (dy / norm) * ahead }, ...from] : from;
  };
  return ended(ended(middle, butt).reverse(), tip).reverse();
}

interface Smooth {
  values: Float64Array;
  sigmaPx: Float64Array;
  weight: Float64Array;
}

/** Whittaker with Tukey's biweight, four rounds; the scatter sets the scale. */
function robustSmooth(offset: Float64Array, weight: Float64Array, wave: number): Smooth {
  let weights = weight.slice();
  let values = whittaker(offset, weights, wave);
  let scatter = 1;
  for (let round = 0; round < 4; round++) {
    const off = Array.from(offset, (value, i) => Math.abs(value - values[i]));
    const sorted = off.filter((_, i) => weight[i] > 0.05).sort((a, b) => a - b);
    scatter = Math.max(0.05, 1.4826 * (sorted[sorted.length >> 1] ?? 1));
    weights = weight.map((w, i) => {
      const ratio = off[i] / (4.5 * scatter);
      return ratio < 1 ? w * (1 - ratio * ratio) ** 2 : 0;
    });
    values = whittaker(offset, weights, wave);
  }
  return { values, sigmaPx: smoothSigma(weights, scatter, wave), weight: weights };
}

/** Scatter over the root of the independent places within half a wave, floored by the grid's own error. */
function smoothSigma(weights: Float64Array, scatter: number, wave: number): Float64Array {
  const half = Math.max(1, Math.round(wave / 4));
  const sums = new Float64Array(weights.length + 1);
  for (let i = 0; i < weights.length; i++) sums[i + 1] = sums[i] + weights[i];
  return weights.map((_, i) => {
    const from = Math.max(0, i - half);
    const to = Math.min(weights.length, i + half + 1);
    // Neighbouring rows share their pixels: about one in six counts.
    const independent = Math.max(0.05, (sums[to] - sums[from]) / 6);
    return Math.hypot(0.1, scatter / Math.sqrt(independent));
  });
}

/** A bridge between stretches that were seen hangs on the first path, which may have followed something else. */
function bridgeSigma(
  weight: Float64Array,
  { stepPx, bridgeShare, mostBridgePx, edgeWavePx }: RefineChoice,
): Float64Array {
  const half = Math.round(edgeWavePx / (4 * stepPx));
  const sums = new Float64Array(weight.length + 1);
  weight.forEach((one, i) => {
    sums[i + 1] = sums[i] + one;
  });
  // an edge here and there is no sight of the blank
  const isSeen = (i: number) => {
    const [from, to] = [Math.max(0, i - half), Math.min(weight.length, i + half + 1)];
    return sums[to] - sums[from] > leastSeen * (to - from);
  };
  const away = new Float64Array(weight.length).fill(Infinity);
  const pass = (i: number, before: number) => {
    away[i] = isSeen(i) ? 0 : Math.min(away[i], (away[before] ?? Infinity) + stepPx);
  };
  for (let i = 0; i < away.length; i++) pass(i, i - 1);
  for (let i = away.length - 1; i >= 0; i--) pass(i, i + 1);
  return away.map((px) => Math.min(mostBridgePx, bridgeShare * px));
}

/** Of the weight, in the mean over half a wave: judgement. */
const leastSeen = 0.2;
