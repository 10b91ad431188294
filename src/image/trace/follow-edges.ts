/**
 * The blank's middle across the strip from both of its edges.
 *
 * First a least-cost path over whole columns (dynamic programming; states are column and polarity), then each
 * edge to sub-pixel by the parabola through the slope's peak; the middle is the mean of the edges, or one edge
 * and the known half-width where the other is hidden.
 */
import type { Strip } from './strip.ts';
import type { Taper } from './taper.ts';

export interface FollowChoice {
  reachPx: number;
  /** Cost of one column's move from row to row; a missing edge pair costs up to 1 a row. */
  moveCost: number;
  polarityCost: number;
  /** Per pixel and row that the middle lies further off than half the width and `slackPx`. */
  astrayCost: number;
  slackPx: number;
}

export interface Followed {
  /** Offset of the middle from the centreline, pixels. */
  offsetPx: Float64Array;
  /** 0 where nothing was seen; up to 1 where both edges are clear. */
  weight: Float64Array;
  /** +1 dark on light, −1 light on dark. */
  polarity: Int8Array;
}

export function followEdges(slope: Strip, taper: Taper, choice: FollowChoice): Followed {
  const reach = Math.min(slope.middle - 1, Math.round(choice.reachPx / slope.columnPx));
  const coarse = coarsePath(slope, taper, choice, reach);
  const { rows } = slope;
  const offsetPx = new Float64Array(rows);
  const weight = new Float64Array(rows);
  const polarity = new Int8Array(rows);
  for (let u = 0; u < rows; u++) {
    polarity[u] = coarse.polarity[u];
    const place = (coarse.column[u] - slope.middle) * slope.columnPx;
    const half = taper.halfPx[u];
    const left = edgeNear(slope, u, place - half, -coarse.polarity[u]);
    const right = edgeNear(slope, u, place + half, coarse.polarity[u]);
    const leftWeight = left.slope / (left.slope + taper.halfSlope);
    const rightWeight = right.slope / (right.slope + taper.halfSlope);
    offsetPx[u] = place;
    if (leftWeight + rightWeight < 0.2) continue;
    // Both edges together measure the middle without the width; one alone leans on the taper.
    const both = Math.min(leftWeight, rightWeight);
    const single = Math.max(leftWeight, rightWeight) - both;
    const mean = (left.atPx + right.atPx) / 2;
    const alone = leftWeight > rightWeight ? left.atPx + half : right.atPx - half;
    offsetPx[u] = (both * mean + 0.25 * single * alone) / (both + 0.25 * single);
    weight[u] = both + 0.25 * single;
  }
  return { offsetPx, weight, polarity };
}

/** Peak of the signed slope within 1.5 px of a place, to sub-pixel. */
function edgeNear(slope: Strip, u: number, nearPx: number, sign: number): { atPx: number; slope: number } {
  const { columns, columnPx, middle, values } = slope;
  const centre = Math.round(nearPx / columnPx) + middle;
  const reach = Math.ceil(1.5 / columnPx);
  let best = -1;
  let bestValue = 0;
  for (let j = Math.max(1, centre - reach); j <= Math.min(columns - 2, centre + reach); j++) {
    const value = sign * values[u * columns + j];
    if (value > bestValue) {
      bestValue = value;
      best = j;
    }
  }
  if (best < 0) return { atPx: nearPx, slope: 0 };
  const before = sign * values[u * columns + best - 1];
  const after = sign * values[u * columns + best + 1];
  const bend = before - 2 * bestValue + after;
  const shift = bend < 0 ? Math.max(-0.5, Math.min(0.5, (before - after) / (2 * bend))) : 0;
  return { atPx: (best + shift - middle) * columnPx, slope: bestValue };
}

interface CoarsePath {
  column: Int32Array;
  polarity: Int8Array;
}

function coarsePath(slope: Strip, taper: Taper, choice: FollowChoice, reach: number): CoarsePath {
  const { rows, middle } = slope;
  const span = 2 * reach + 1;
  const states = 2 * span;
  const from = new Int16Array(rows * states);
  let cost = new Float64Array(states);
  const astray = new Float64Array(span);
  for (let u = 0; u < rows; u++) {
    const next = new Float64Array(states);
    for (let k = 0; k < span; k++) {
      const beyond = Math.abs(k - reach) * slope.columnPx - taper.halfPx[u] - choice.slackPx;
      astray[k] = beyond > 0 ? choice.astrayCost * beyond : 0;
    }
    for (let p = 0; p < 2; p++) {
      for (let k = 0; k < span; k++) {
        const here = p * span + k;
        let best = cost[here];
        let source = here;
        const offer = (state: number, extra: number): void => {
          if (cost[state] + extra < best) {
            best = cost[state] + extra;
            source = state;
          }
        };
        if (k > 0) offer(here - 1, choice.moveCost);
        if (k + 1 < span) offer(here + 1, choice.moveCost);
        offer((1 - p) * span + k, choice.polarityCost);
        from[u * states + here] = source;
        next[here] = best + astray[k] + 1 - pairVote(slope, taper, u, middle - reach + k, p === 0 ? 1 : -1);
      }
    }
    cost = next;
  }
  let state = cost.indexOf(Math.min(...cost));
  const column = new Int32Array(rows);
  const polarity = new Int8Array(rows);
  for (let u = rows - 1; u >= 0; u--) {
    column[u] = middle - reach + (state % span);
    polarity[u] = state < span ? 1 : -1;
    state = from[u * states + state];
  }
  return { column, polarity };
}

function pairVote(slope: Strip, taper: Taper, u: number, column: number, polarity: number): number {
  const { columns, columnPx, values } = slope;
  const half = Math.max(1, Math.round(taper.halfPx[u] / columnPx));
  if (column - half < 0 || column + half >= columns) return 0;
  const left = -polarity * values[u * columns + column - half];
  const right = polarity * values[u * columns + column + half];
  const weaker = Math.min(left, right);
  if (weaker <= 0) return 0;
  return weaker / (weaker + taper.halfSlope);
}
