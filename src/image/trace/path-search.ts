/**
 * The cheapest smooth path through ridge points from the butt to the tip.
 *
 * States are ridge points with one of two headings, so that the path cannot turn from the blank into a cable
 * that crosses it. Cost of a step: faint ridge + ∫κ² ds + change of colour, width and polarity + gap jumped.
 * Source: Dijkstra's shortest path; the lifted (place and heading) form follows the elastica-like curve
 * completion of D. Mumford, "Elastica and computer vision", 1994 (from memory).
 */
import type { Point } from '../camera/homography.ts';
import { CostHeap } from './heap.ts';
import type { RidgePoints } from './ridge-points.ts';

export interface PathCosts {
  /** Per pixel of length along a perfectly clear ridge. */
  length: number;
  /** Per pixel of length along a ridge at the noise. */
  faint: number;
  /** Strength at which the faintness has halved. */
  strengthHalf: number;
  /** Standard error of a heading on long support, and the part that falls with support^1.5. */
  turnSigmaRad: number;
  turnSupport: number;
  /** Per pixel beyond `stepPx` without a ridge point. */
  gap: number;
  /** With a step at hand no dearer than this, no jump is tried. */
  clearStep: number;
  polarity: number;
  colour: number;
  colourSpread: number;
  scale: number;
  /** Shortest and longest step. */
  stepPx: { least: number; plain: number; most: number };
  /** Widest turn from heading to step, or from step to heading. */
  widestTurnRad: number;
  /** Taps are trusted to about this distance; the cost of a miss grows with its square up to `tapMost`. */
  tapPx: number;
  tapMost: number;
  /** Points with less line behind their heading than this are pivots to nowhere and left out. */
  leastSupportPx: number;
}

export const pathCosts: PathCosts = {
  length: 0.02,
  faint: 0.5,
  strengthHalf: 16,
  turnSigmaRad: 0.02,
  turnSupport: 0.8,
  gap: 0.5,
  clearStep: 1.5,
  polarity: 4,
  colour: 1,
  colourSpread: 25,
  scale: 0.5,
  stepPx: { least: 5, plain: 9, most: 60 },
  widestTurnRad: 0.5,
  tapPx: 3,
  tapMost: 30,
  leastSupportPx: 5,
};

export interface PathInput {
  points: RidgePoints;
  /** Red, green, blue 0..255 at each point, interleaved. */
  colours: Float32Array;
  /** Length of line behind each point's heading. */
  support: Float32Array;
  width: number;
  height: number;
  /** Butt, points between, tip, in pixels of the ridge image. */
  stops: readonly Point[];
  costs: PathCosts;
}

export type PathAnswer =
  | { status: 'converged'; path: Point[]; cost: number; settled: number }
  | {
      status: 'lost';
      leg: number;
      reachedPx: Point;
      /** The stop with nothing long and thin near it; then it is also what was reached. */
      bareStop?: number;
      settled: number;
    };

/** Finds the path leg by leg; the states around a stop carry their cost into the next leg. */
export function pathSearch(input: PathInput): PathAnswer {
  const grid = ridgeGrid(input);
  const bareStop = input.stops.findIndex((stop) => statesNear(input, grid, stop).length === 0);
  if (bareStop >= 0) {
    const leg = Math.max(0, bareStop - 1);
    return { status: 'lost', leg, reachedPx: input.stops[bareStop], bareStop, settled: 0 };
  }
  let start = statesNear(input, grid, input.stops[0]);
  let settled = 0;
  const parents: Int32Array[] = [];
  for (let leg = 0; leg + 1 < input.stops.length; leg++) {
    const found = searchLeg(input, grid, start, input.stops[leg + 1]);
    settled += found.settled;
    parents.push(found.parent);
    if (found.ends.length === 0) {
      return { status: 'lost', leg, reachedPx: found.nearest, settled };
    }
    start = found.ends;
  }
  const last = start.reduce((a, b) => (b.cost < a.cost ? b : a));
  const path: Point[] = [];
  let state = last.state;
  for (let leg = parents.length - 1; leg >= 0; leg--) {
    for (;;) {
      const point = state >> 1;
      path.push({ x: input.points.x[point], y: input.points.y[point] });
      const next = parents[leg][state];
      if (next === state) break;
      state = next;
    }
    if (leg > 0) path.pop();
  }
  return { status: 'converged', path: path.reverse(), cost: last.cost, settled };
}

interface StateCost {
  state: number;
  cost: number;
}

export interface RidgeGrid {
  cellPx: number;
  columns: number;
  rows: number;
  /** Points of cell c are order[first[c] .. first[c + 1]). */
  first: Int32Array;
  order: Int32Array;
}

/** Ridge points by cells, those with too little line behind them left out. */
export function ridgeGrid(input: Omit<PathInput, 'stops'>): RidgeGrid {
  const cellPx = 6;
  const columns = Math.ceil(input.width / cellPx) + 1;
  const rows = Math.ceil(input.height / cellPx) + 1;
  const { points } = input;
  const cells = new Int32Array(points.count);
  const first = new Int32Array(columns * rows + 1);
  for (let i = 0; i < points.count; i++) {
    cells[i] = -1;
    if (input.support[i] < input.costs.leastSupportPx) continue;
    const column = Math.min(columns - 1, Math.max(0, Math.floor(points.x[i] / cellPx)));
    const row = Math.min(rows - 1, Math.max(0, Math.floor(points.y[i] / cellPx)));
    cells[i] = row * columns + column;
    first[cells[i] + 1]++;
  }
  for (let c = 0; c < columns * rows; c++) first[c + 1] += first[c];
  const fill = first.slice();
  const order = new Int32Array(first[columns * rows]);
  for (let i = 0; i < points.count; i++) if (cells[i] >= 0) order[fill[cells[i]]++] = i;
  return { cellPx, columns, rows, first, order };
}

export function pointsWithin(
  grid: RidgeGrid,
  x: number,
  y: number,
  reach: number,
  visit: (point: number) => void,
): void {
  const left = Math.max(0, Math.floor((x - reach) / grid.cellPx));
  const right = Math.min(grid.columns - 1, Math.floor((x + reach) / grid.cellPx));
  const top = Math.max(0, Math.floor((y - reach) / grid.cellPx));
  const bottom = Math.min(grid.rows - 1, Math.floor((y + reach) / grid.cellPx));
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const cell = row * grid.columns + column;
      for (let k = grid.first[cell]; k < grid.first[cell + 1]; k++) visit(grid.order[k]);
    }
  }
}

function tapCost(input: PathInput, point: number, at: Point): number {
  const away = Math.hypot(input.points.x[point] - at.x, input.points.y[point] - at.y) / input.costs.tapPx;
  return away * away;
}

function statesNear(input: PathInput, grid: RidgeGrid, at: Point): StateCost[] {
  const out: StateCost[] = [];
  const reach = Math.sqrt(input.costs.tapMost) * input.costs.tapPx;
  pointsWithin(grid, at.x, at.y, reach, (point) => {
    const cost = tapCost(input, point, at);
    if (cost < input.costs.tapMost) out.push({ state: 2 * point, cost }, { state: 2 * point + 1, cost });
  });
  return out;
}

interface LegAnswer {
  parent: Int32Array;
  ends: StateCost[];
  nearest: Point;
  settled: number;
}

/** Dijkstra over the states. One straight-line kernel: unpacking it would cost half its speed. */
function searchLeg(input: PathInput, grid: RidgeGrid, start: readonly StateCost[], goal: Point): LegAnswer {
  const { points, costs } = input;
  const states = 2 * points.count;
  const cost = new Float64Array(states).fill(Infinity);
  const parent = new Int32Array(states).fill(-1);
  const done = new Uint8Array(states);
  const faint = faintness(points, costs);
  const spread = input.support.map(
    (support) => costs.turnSigmaRad ** 2 + costs.turnSupport ** 2 / (3 + support) ** 3,
  );
  const heap = new CostHeap();
  for (const one of start) {
    if (one.cost >= cost[one.state]) continue;
    cost[one.state] = one.cost;
    parent[one.state] = one.state;
    heap.push(one.cost, one.state);
  }
  const endCost = new Map<number, number>();
  for (const one of statesNear(input, grid, goal)) endCost.set(one.state, one.cost);
  let best = Infinity;
  let settled = 0;
  let nearest = { x: 0, y: 0 };
  let nearestPx = Infinity;
  const ends: StateCost[] = [];
  while (heap.size > 0) {
    const top = heap.pop();
    const state = top.state;
    if (done[state]) continue;
    if (top.cost > best + 10) break;
    done[state] = 1;
    settled++;
    const p = state >> 1;
    const sign = state & 1 ? -1 : 1;
    const x = points.x[p];
    const y = points.y[p];
    const away = Math.hypot(x - goal.x, y - goal.y);
    if (away < nearestPx) {
      nearestPx = away;
      nearest = { x, y };
    }
    const tap = endCost.get(state);
    if (tap !== undefined) {
      ends.push({ state, cost: top.cost + tap });
      best = Math.min(best, top.cost + tap);
    }
    const hx = points.tangentX[p] * sign;
    const hy = points.tangentY[p] * sign;
    relax(x, y, hx, hy, state, top.cost);
  }
  return { parent, ends, nearest, settled };

  function relax(x: number, y: number, hx: number, hy: number, state: number, base: number): void {
    const { least, plain, most } = costs.stepPx;
    // Near ring first; the far cone only where the near ring holds nothing good.
    let bestNear = Infinity;
    pointsWithin(grid, x, y, 2.2 * plain, (q) => {
      bestNear = Math.min(
        bestNear,
        tryStep(q, x, y, hx, hy, state, base, least, 2.2 * plain, costs.widestTurnRad),
      );
    });
    if (bestNear < costs.clearStep) return;
    // A narrow far cone, sampled along the heading.
    for (let ahead = 2.2 * plain; ahead < most; ahead += grid.cellPx) {
      const reach = Math.max(grid.cellPx / 2, 0.15 * ahead);
      pointsWithin(grid, x + hx * ahead, y + hy * ahead, reach, (q) => {
        tryStep(q, x, y, hx, hy, state, base, 2.2 * plain, most, 0.2);
      });
    }
  }

  function tryStep(
    q: number,
    x: number,
    y: number,
    hx: number,
    hy: number,
    state: number,
    base: number,
    least: number,
    most: number,
    widest: number,
  ): number {
    const dx = points.x[q] - x;
    const dy = points.y[q] - y;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length < least || length > most) return Infinity;
    const forward = (dx * hx + dy * hy) / length;
    if (forward < 0.85) return Infinity;
    const out = Math.acos(Math.min(1, forward));
    if (out > widest) return Infinity;
    let along = (dx * points.tangentX[q] + dy * points.tangentY[q]) / length;
    const flip = along < 0 ? 1 : 0;
    along = Math.abs(along);
    if (along < 0.85) return Infinity;
    const into = Math.acos(Math.min(1, along));
    if (into > widest) return Infinity;
    const next = 2 * q + flip;
    const p = state >> 1;
    let step = length * (costs.length + costs.faint * 0.5 * (faint[p] + faint[q]));
    step += (out * out) / spread[p] + (into * into) / spread[q];
    if (length > costs.stepPx.plain) step += costs.gap * (length - costs.stepPx.plain);
    if (points.polarity[p] !== points.polarity[q]) step += costs.polarity;
    const widen = Math.log(points.scale[p] / points.scale[q]);
    step += costs.scale * widen * widen;
    step += costs.colour * colourChange(p, q);
    const total = base + step;
    if (!done[next] && total < cost[next]) {
      cost[next] = total;
      parent[next] = state;
      heap.push(total, next);
    }
    return step;
  }

  function colourChange(p: number, q: number): number {
    const { colours } = input;
    const r = colours[3 * p] - colours[3 * q];
    const g = colours[3 * p + 1] - colours[3 * q + 1];
    const b = colours[3 * p + 2] - colours[3 * q + 2];
    return Math.min(3, (r * r + g * g + b * b) / (3 * costs.colourSpread * costs.colourSpread));
  }
}

function faintness(points: RidgePoints, costs: PathCosts): Float32Array {
  return points.strength.map((strength) => 1 / (1 + (strength / costs.strengthHalf) ** 2));
}
