/**
 * The cheapest smooth path through ridge points from the butt to the tip.
 *
 * States are ridge points with one of two headings, so that the path cannot turn from the blank into a cable
 * that crosses it. Cost of a step: faint ridge + ∫κ² ds + change of colour, width and polarity + gap jumped.
 * Source: Dijkstra's shortest path; the lifted (place and heading) form follows the elastica-like curve
 * completion of D. Mumford, "Elastica and computer vision", 1994 (from memory).
 */
import type { Point } from '../camera/homography.ts';
import type { RidgeInput } from './path-costs.ts';
import { explorePaths, type StateCost } from './path-explore.ts';
import { pointsWithin, type RidgeGrid, ridgeGrid } from './ridge-grid.ts';

export interface PathInput extends RidgeInput {
  /** Butt, points between, tip, in pixels of the ridge image. */
  stops: readonly Point[];
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

function searchLeg(input: PathInput, grid: RidgeGrid, start: readonly StateCost[], goal: Point): LegAnswer {
  const { points } = input;
  const endCost = new Map(statesNear(input, grid, goal).map(({ state, cost }) => [state, cost]));
  const ends: StateCost[] = [];
  let [best, settled, nearestPx, nearest] = [Infinity, 0, Infinity, { x: 0, y: 0 }];
  const parent = explorePaths(input, grid, start, (state, cost) => {
    if (cost > best + 10) return 'stop';
    settled++;
    const [x, y] = [points.x[state >> 1], points.y[state >> 1]];
    const away = Math.hypot(x - goal.x, y - goal.y);
    if (away < nearestPx) [nearestPx, nearest] = [away, { x, y }];
    const tap = endCost.get(state);
    if (tap !== undefined) {
      ends.push({ state, cost: cost + tap });
      best = Math.min(best, cost + tap);
    }
    return 'expand';
  });
  return { parent, ends, nearest, settled };
}
