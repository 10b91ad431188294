/**
 * Dijkstra's shortest paths over ridge points with a heading: which states are reached, how dearly and whence. Cost of a
 * step: faint ridge + ∫κ² ds + change of colour, width and polarity + gap jumped.
 */
import { CostHeap } from './heap.ts';
import type { PathCosts, RidgeInput } from './path-costs.ts';
import type { RidgeGrid } from './ridge-grid.ts';
import { pointsWithin } from './ridge-grid.ts';
import type { RidgePoints } from './ridge-points.ts';

/** A state is twice a ridge point's index, plus one where the path runs against the point's tangent. */
export interface StateCost {
  state: number;
  cost: number;
}

/** What to do with a state whose cheapest path is known: go on from it, leave it, or end the search. */
export type Verdict = 'expand' | 'leave' | 'stop';

/** The cheapest paths from `start`, cheapest first; the answer holds each state's parent, a start its own, else −1. */
export function explorePaths(
  input: RidgeInput,
  grid: RidgeGrid,
  start: readonly StateCost[],
  settle: (state: number, cost: number, parent: number) => Verdict,
): Int32Array {
  const { points } = input;
  const states = 2 * points.count;
  const cost = new Float64Array(states).fill(Infinity);
  const parent = new Int32Array(states).fill(-1);
  const done = new Uint8Array(states);
  const heap = new CostHeap();
  const offer = (total: number, state: number, from: number): void => {
    if (done[state] || total >= cost[state]) return;
    cost[state] = total;
    parent[state] = from;
    heap.push(total, state);
  };
  for (const one of start) offer(one.cost, one.state, one.state);
  const relax = relaxation(input, grid, offer);
  while (heap.size > 0) {
    const top = heap.pop();
    if (done[top.state]) continue;
    const verdict = settle(top.state, top.cost, parent[top.state]);
    if (verdict === 'stop') break;
    done[top.state] = 1;
    if (verdict === 'expand') relax(top.state, top.cost);
  }
  return parent;
}

/** Offers every step out of a state. One straight-line kernel: unpacking it would cost half its speed. */
function relaxation(
  input: RidgeInput,
  grid: RidgeGrid,
  offer: (total: number, state: number, from: number) => void,
): (state: number, base: number) => void {
  const { points, costs } = input;
  const { x: px, y: py, tangentX, tangentY } = points;
  const { least, plain, most } = costs.stepPx;
  const faint = faintness(points, costs);
  const spread = turnSpread(input.support, costs);
  let [x, y, hx, hy, from, base] = [0, 0, 0, 0, 0, 0];

  /** The step's cost; infinite where there is none. */
  function tryStep(q: number, shortest: number, longest: number, widest: number): number {
    const dx = px[q] - x;
    const dy = py[q] - y;
    const ahead = dx * hx + dy * hy;
    if (ahead <= 0) return Infinity;
    const length = Math.sqrt(dx * dx + dy * dy);
    if (length < shortest || length > longest || ahead < 0.85 * length) return Infinity;
    const into = (dx * tangentX[q] + dy * tangentY[q]) / length;
    const alike = Math.abs(into);
    if (alike < 0.85) return Infinity;
    const out = Math.acos(Math.min(1, ahead / length));
    const turn = Math.acos(Math.min(1, alike));
    if (out > widest || turn > widest) return Infinity;
    const p = from >> 1;
    let step = length * (costs.length + costs.faint * 0.5 * (faint[p] + faint[q]));
    step += (out * out) / spread[p] + (turn * turn) / spread[q];
    if (length > plain) step += costs.gap * (length - plain);
    if (points.polarity[p] !== points.polarity[q]) step += costs.polarity;
    if (points.scale[p] !== points.scale[q]) {
      const widen = Math.log(points.scale[p] / points.scale[q]);
      step += costs.scale * widen * widen;
    }
    step += costs.colour * colourChange(input, p, q);
    offer(base + step, 2 * q + (into < 0 ? 1 : 0), from);
    return step;
  }

  return (state, stateCost) => {
    const p = state >> 1;
    const sign = state & 1 ? -1 : 1;
    [x, y, hx, hy, from, base] = [px[p], py[p], tangentX[p] * sign, tangentY[p] * sign, state, stateCost];
    // Near ring first; the far cone only where the near ring holds nothing good.
    let bestNear = Infinity;
    pointsWithin(grid, x, y, 2.2 * plain, (q) => {
      const step = tryStep(q, least, 2.2 * plain, costs.widestTurnRad);
      if (step < bestNear) bestNear = step;
    });
    if (bestNear < costs.clearStep) return;
    // A narrow far cone, sampled along the heading.
    for (let ahead = 2.2 * plain; ahead < most; ahead += grid.cellPx) {
      const reach = Math.max(grid.cellPx / 2, 0.15 * ahead);
      pointsWithin(grid, x + hx * ahead, y + hy * ahead, reach, (q) => {
        tryStep(q, 2.2 * plain, most, 0.2);
      });
    }
  };
}

function colourChange({ colours, costs }: RidgeInput, p: number, q: number): number {
  const r = colours[3 * p] - colours[3 * q];
  const g = colours[3 * p + 1] - colours[3 * q + 1];
  const b = colours[3 * p + 2] - colours[3 * q + 2];
  return Math.min(3, (r * r + g * g + b * b) / (3 * costs.colourSpread * costs.colourSpread));
}

function faintness(points: RidgePoints, costs: PathCosts): Float32Array {
  return points.strength.map((strength) => 1 / (1 + (strength / costs.strengthHalf) ** 2));
}

/** Variance of a point's heading: little line behind it tells little. */
function turnSpread(support: Float32Array, costs: PathCosts): Float32Array {
  return support.map((one) => costs.turnSigmaRad ** 2 + costs.turnSupport ** 2 / (3 + one) ** 3);
}
