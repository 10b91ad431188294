/**
 * Where guides may stand, as linear constraints on their stations: intervals not below the least, feet apart,
 * intervals growing towards the butt where asked, held guides held, and for each guide the stretch between
 * kept-free zones that it is to stay in (kept-free.ts chooses it).
 */
import { solveConvexQp } from '../numerics/convex-qp.ts';

export interface PlacingRules {
  count: number;
  /** Station of each guide that does not move; undefined for the others. */
  held: readonly (number | undefined)[];
  /** Least interval between guide i and i + 1. */
  leastIntervalM: readonly number[];
  /** 'growing-from-tip' also holds the first interval between guides to that from the tip-top. */
  growth: 'free' | 'growing' | 'growing-from-tip';
  /** Least and largest station per guide. */
  lowM: readonly number[];
  highM: readonly number[];
}
/** a·(stations of the moving guides) ≥ bound. */
export interface PlacingRows {
  moving: readonly number[];
  rows: Float64Array[];
  bounds: number[];
  /** The held guides alone break a rule. */
  broken: boolean;
}

export function placingRows(rules: PlacingRules): PlacingRows {
  const moving = rules.held.flatMap((station, i) => (station === undefined ? [i] : []));
  const out: PlacingRows = { moving, rows: [], bounds: [], broken: false };
  const add = (terms: Record<number, number>, bound: number) => addRow(rules, out, terms, bound);
  for (let i = 0; i + 1 < rules.count; i++) add({ [i + 1]: 1, [i]: -1 }, rules.leastIntervalM[i]);
  if (rules.growth !== 'free') {
    for (let i = 1; i + 1 < rules.count; i++) add({ [i - 1]: 1, [i]: -2, [i + 1]: 1 }, 0);
  }
  if (rules.growth === 'growing-from-tip' && rules.count > 1) add({ 0: -2, 1: 1 }, 0);
  for (let i = 0; i < rules.count; i++) {
    if (rules.lowM[i] > Number.NEGATIVE_INFINITY) add({ [i]: 1 }, rules.lowM[i]);
    if (rules.highM[i] < Number.POSITIVE_INFINITY) add({ [i]: -1 }, -rules.highM[i]);
  }
  return out;
}

/** The layout nearest to `stations` that keeps the rules; undefined where none does. */
export function nearestLayout(rules: PlacingRules, stations: readonly number[]): number[] | undefined {
  const { moving, rows, bounds, broken } = placingRows(rules);
  if (broken) return undefined;
  const n = moving.length;
  const hessian = new Float64Array(n * n);
  for (let i = 0; i < n; i++) hessian[i * n + i] = 1;
  const linear = Float64Array.from(moving, (guide) => -stations[guide]);
  const answer = solveConvexQp({ hessian, linear, rows, bounds });
  if (answer.status !== 'solved') return undefined;
  return withMoving(rules, moving, answer.x);
}

/** All stations: the held ones and those of the moving guides. */
export function withMoving(
  rules: PlacingRules,
  moving: readonly number[],
  places: ArrayLike<number>,
): number[] {
  const stations = rules.held.map((station) => station ?? 0);
  moving.forEach((guide, column) => {
    stations[guide] = places[column];
  });
  return stations;
}

/** Sums of stations are exact to about this. */
const roundingM = 1e-9;

/** Moves the held guides' part to the bound; a row of held guides alone is kept or broken at once. */
function addRow(rules: PlacingRules, out: PlacingRows, terms: Record<number, number>, bound: number): void {
  const row = new Float64Array(out.moving.length);
  let rest = bound;
  for (const [key, factor] of Object.entries(terms)) {
    const guide = Number(key);
    const station = rules.held[guide];
    if (station === undefined) row[out.moving.indexOf(guide)] = factor;
    else rest -= factor * station;
  }
  if (row.every((factor) => factor === 0)) {
    out.broken ||= rest > roundingM;
  } else {
    out.rows.push(row);
    out.bounds.push(rest);
  }
}
