/**
 * Moves the guides so that a price falls:
 *
 *   price = shape(stations) + weight · max(0, worst ratio - floor)
 *
 * by sequential quadratic programming in a trust region. With d the moves and w the worst ratio, a step solves
 *   min  shape's quadratic model in d + weight · w + ½ ρ |d|²
 *   subject to  r_j + g_j·d ≤ w for every reading j,  w ≥ floor,  the placing rules,  |d_i| ≤ Δ.
 * The small ρ picks the nearest of equal corners. A step is taken where the true price falls by a fair share of
 * what the model promised, and Δ follows how well the promise was kept (Fletcher 1987, Practical Methods of
 * Optimization, 2nd ed., chapter 14: composite non-smooth functions).
 */
import { solveConvexQp } from '../numerics/convex-qp.ts';
import { type PlacingRows, type PlacingRules, placingRows, withMoving } from './placing-rules.ts';
import { freshRatiosAt, type RatioProbe, type Ratios, ratioSlopes, ratiosAt } from './ratios.ts';

/** A smooth function of all stations with gradient and a positive semidefinite Hessian (n × n by rows). */
export interface ShapeModel {
  value: number;
  gradient: Float64Array;
  hessian: Float64Array;
}
export interface Aim {
  shape?: (fromTipM: readonly number[]) => ShapeModel;
  weight: number;
  floor: number;
}
export interface Placed {
  fromTipM: number[];
  worst: number;
  price: number;
}
export interface SearchOptions {
  maxSteps: number;
  /** First reach of a step per guide, and the reach below which the search ends. */
  reachM: number;
  smallestReachM: number;
  /** Ends when the model promises less than this share of the price. */
  tolerance: number;
}
export const searchDefaults: SearchOptions = {
  maxSteps: 40,
  reachM: 0.03,
  smallestReachM: 1e-4,
  tolerance: 2e-4,
};

/**
 * `start` must keep the rules. Hands back the best layout met, bent afresh: its price is that of the bend which
 * the load reaches from nothing.
 */
export function trustSearch(
  probe: RatioProbe,
  rules: PlacingRules,
  start: readonly number[],
  aim: Aim,
  options: SearchOptions = searchDefaults,
): Placed {
  const placing = placingRows(rules);
  let here = look(freshRatiosAt(probe, start), start, aim);
  let reachM = options.reachM;
  for (let step = 0; step < options.maxSteps && placing.moving.length > 0; step++) {
    if (here.price === Number.POSITIVE_INFINITY) break;
    const slopes = ratioSlopes(probe, here.fromTipM, here.ratios.values, placing.moving);
    const taken = takeStep(probe, rules, { here, slopes, placing, aim, reachM }, options);
    if (!taken.here) break;
    here = taken.here;
    reachM = taken.reachM;
  }
  const { fromTipM, ratios, price } = look(freshRatiosAt(probe, here.fromTipM), here.fromTipM, aim);
  return { fromTipM, worst: ratios.worst, price };
}

/** Shortens the reach until a step holds its promise; no `here` where none is worth taking. */
function takeStep(probe: RatioProbe, rules: PlacingRules, from: Around, options: SearchOptions) {
  const { here, aim, placing } = from;
  let { reachM } = from;
  while (reachM >= options.smallestReachM) {
    const model = modelStep({ ...from, reachM });
    const promised = here.price - model.price;
    if (!(promised > options.tolerance * here.price)) break;
    const stations = withMoving(rules, placing.moving, model.places);
    const tried = look(ratiosAt(probe, stations, true), stations, aim);
    const kept = (here.price - tried.price) / promised;
    if (kept > 0.75) reachM *= 2;
    else if (!(kept >= 0.3)) reachM *= 0.4;
    if (kept > 0.1) return { here: look(ratiosAt(probe, stations), stations, aim), reachM };
  }
  return { here: undefined, reachM };
}

interface Look {
  fromTipM: number[];
  ratios: Ratios;
  price: number;
}

function look(ratios: Ratios, fromTipM: readonly number[], aim: Aim): Look {
  const shape = aim.shape?.(fromTipM).value ?? 0;
  const price = shape + aim.weight * Math.max(0, ratios.worst - aim.floor);
  return { fromTipM: [...fromTipM], ratios, price };
}

interface Around {
  here: Look;
  slopes: readonly Float64Array[];
  placing: PlacingRows;
  aim: Aim;
  reachM: number;
}

/** Minimum of the model within reach: where the moving guides go, and the price it promises. */
function modelStep({ here, slopes, placing, aim, reachM }: Around) {
  const { moving } = placing;
  const n = moving.length;
  const { rows, bounds } = modelRows(here, slopes, placing, reachM);
  const worstOnly = new Float64Array(n + 1);
  worstOnly[n] = 1;
  rows.push(worstOnly);
  bounds.push(aim.floor);

  const nearness = 0.1; // ρ: 0.05 m off costs about 1e-4 of a ratio
  const hessian = new Float64Array((n + 1) * (n + 1));
  const linear = new Float64Array(n + 1);
  const shape = aim.shape?.(here.fromTipM);
  for (let i = 0; i < n; i++) {
    if (shape) linear[i] = shape.gradient[moving[i]];
    for (let k = 0; shape && k < n; k++) {
      hessian[i * (n + 1) + k] = shape.hessian[moving[i] * here.fromTipM.length + moving[k]];
    }
    hessian[i * (n + 2)] += nearness;
  }
  // a slight curvature in w keeps the program strictly convex and leaves its minimum where it is
  hessian[n * (n + 2)] = nearness;
  linear[n] = aim.weight - nearness * here.ratios.worst;
  const { x } = solveConvexQp({ hessian, linear, rows, bounds });

  let price = aim.weight * Math.max(0, modelWorst(here, slopes, x) - aim.floor) + (shape?.value ?? 0);
  for (let i = 0; i < n; i++) {
    price += linear[i] * x[i];
    for (let k = 0; k < n; k++)
      price += 0.5 * (hessian[i * (n + 1) + k] - (i === k ? nearness : 0)) * x[i] * x[k];
  }
  return { places: moving.map((guide, i) => here.fromTipM[guide] + x[i]), price };
}

/** Rows over the moves and w: readings below w, placing rules, reach. */
function modelRows(here: Look, slopes: readonly Float64Array[], placing: PlacingRows, reachM: number) {
  const n = placing.moving.length;
  const rows: Float64Array[] = [];
  const bounds: number[] = [];
  slopes.forEach((slope, j) => {
    const row = new Float64Array(n + 1);
    for (let i = 0; i < n; i++) row[i] = -slope[i];
    row[n] = 1;
    rows.push(row);
    bounds.push(here.ratios.values[j]);
  });
  placing.rows.forEach((placingRow, k) => {
    const row = new Float64Array(n + 1);
    row.set(placingRow);
    rows.push(row);
    bounds.push(
      placing.moving.reduce(
        (rest, guide, i) => rest - placingRow[i] * here.fromTipM[guide],
        placing.bounds[k],
      ),
    );
  });
  for (let i = 0; i < n; i++) {
    for (const sign of [1, -1]) {
      const row = new Float64Array(n + 1);
      row[i] = sign;
      rows.push(row);
      bounds.push(-reachM);
    }
  }
  return { rows, bounds };
}

function modelWorst(here: Look, slopes: readonly Float64Array[], moves: Float64Array): number {
  let worst = 0;
  for (let j = 0; j < slopes.length; j++) {
    let value = here.ratios.values[j];
    for (let i = 0; i < slopes[j].length; i++) value += slopes[j][i] * moves[i];
    if (value > worst) worst = value;
  }
  return worst;
}
