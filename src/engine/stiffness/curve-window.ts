/** One window of a traced curve: what moments, a shift and a turn displace there, square to it (second-estimate.ts). */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import type { EvenCurve } from './curve-moment.ts';

export interface Window {
  /** Per place, displacement square to the curve by a shift of the whole, a turn about the window's start, and c. */
  rows: Float64Array[];
  from: number;
  to: number;
}

/** Displacements square to the curve, counted from the window's end nearer the hold. */
export function windowOf(even: EvenCurve, moment: Float64Array, first: number, end: number): Window {
  const bent = bentBy(even, moment, first, end, () => 1);
  const middle = normalAt(even, (first + end) >> 1);
  const rows = bent.map((byCompliance, j) => {
    const i = end - j;
    const normal = normalAt(even, i);
    const lever = along(even, i, end, normal);
    return Float64Array.of(normal.x * middle.x + normal.y * middle.y, lever, byCompliance);
  });
  return { rows, from: first, to: end };
}

function normalAt({ angleRad }: EvenCurve, i: number) {
  return { x: -Math.sin(angleRad[i]), y: Math.cos(angleRad[i]) };
}

/** How far place i moves along its normal when the curve turns about the window's start by 1 rad. */
function along({ xM, yM }: EvenCurve, i: number, start: number, normal: { x: number; y: number }): number {
  return -(yM[i] - yM[start]) * normal.x + (xM[i] - xM[start]) * normal.y;
}

/** Displacement along the normal, hold side first, of a curve whose angle grows by Σ M c(s) ds along it. */
export function bentBy(
  even: EvenCurve,
  moment: Float64Array,
  first: number,
  end: number,
  compliance: (fromTipM: number) => number,
): number[] {
  const { stepM, angleRad } = even;
  let turn = 0;
  let x = 0;
  let y = 0;
  const out = [0];
  for (let i = end - 1; i >= first; i--) {
    const middle = (i + 0.5) * stepM;
    const add = 0.5 * (moment[i] + moment[i + 1]) * compliance(middle) * stepM;
    const angle = 0.5 * (angleRad[i] + angleRad[i + 1]);
    x -= stepM * Math.sin(angle) * (turn + 0.5 * add);
    y += stepM * Math.cos(angle) * (turn + 0.5 * add);
    turn += add;
    const normal = normalAt(even, i);
    out.push(x * normal.x + y * normal.y);
  }
  return out;
}

/** The seen curve less a straight one that leaves the window's start: what its curvature did. */
export function seenDisplacement(even: EvenCurve, { from, to }: Window): number[] {
  const turns = (i: number) => even.angleRad[i] - even.angleRad[to];
  let x = 0;
  let y = 0;
  const out = [0];
  for (let i = to - 1; i >= from; i--) {
    const angle = 0.5 * (even.angleRad[i] + even.angleRad[i + 1]);
    const turn = 0.5 * (turns(i) + turns(i + 1));
    x -= even.stepM * Math.sin(angle) * turn;
    y += even.stepM * Math.cos(angle) * turn;
    const normal = normalAt(even, i);
    out.push(x * normal.x + y * normal.y);
  }
  return out;
}

/** c, and its variance for errors of 1 m each; undefined where the window cannot tell it. */
export function leastSquares(rows: readonly Float64Array[], right: readonly number[]) {
  const normal = new Float64Array(9);
  const side = new Float64Array(3);
  rows.forEach((row, j) => {
    for (let a = 0; a < 3; a++) {
      side[a] += row[a] * right[j];
      for (let b = 0; b < 3; b++) normal[a * 3 + b] += row[a] * row[b];
    }
  });
  if (!factorCholesky(normal, 3)) return undefined;
  const unit = Float64Array.of(0, 0, 1);
  for (const vector of [side, unit]) {
    solveLower(normal, 3, vector, vector);
    solveUpper(normal, 3, vector, vector);
  }
  return unit[2] > 0 ? { perNm2: side[2], gain: unit[2] } : undefined;
}
