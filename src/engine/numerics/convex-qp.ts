/**
 * Small dense convex quadratic programs:  minimise ½ xᵀ H x + cᵀ x  subject to  A x ≥ b,  H positive definite.
 *
 * Dual active-set method of Goldfarb & Idnani (1983), Mathematical Programming 27:1-33: starts at the
 * unconstrained minimum and takes in one violated constraint at a time, dropping those whose multiplier would
 * turn negative. J = L⁻ᵀ Q and the triangular R of the active normals are kept by plane rotations. It needs no
 * feasible start, and tells infeasible constraints from feasible ones.
 */
import { dot } from './dot.ts';

interface ConvexQp {
  /** n × n by rows, symmetric. */
  hessian: Float64Array;
  linear: Float64Array;
  /** Constraints a·x ≥ bound. */
  rows: readonly Float64Array[];
  bounds: ArrayLike<number>;
}
interface QpResult {
  status: 'solved' | 'infeasible' | 'not-converged';
  /** The minimum; the last point of the dual path where the status is not 'solved'. */
  x: Float64Array;
  /** Indices of the constraints that hold with equality, and their multipliers. */
  active: number[];
  multipliers: number[];
  iterations: number;
}

/** Throws where H is not positive definite: a broken promise of the caller. */
export function solveConvexQp(qp: ConvexQp, maxIterations = 40 + 10 * qp.linear.length): QpResult {
  const n = qp.linear.length;
  const basis = startBasis(qp.hessian, n);
  const state: DualState = {
    n,
    x: freeMinimum(basis, qp.linear),
    basis,
    triangle: new Float64Array(n * n),
    active: [],
    multipliers: [],
  };
  const scale = qp.rows.map((row) => Math.sqrt(dot(row, row)) || 1);
  for (let iteration = 0; iteration <= maxIterations; iteration++) {
    const next = mostViolated(qp, scale, state);
    const { x, active, multipliers } = state;
    if (next < 0) return { status: 'solved', x, active, multipliers, iterations: iteration };
    if (!takeIn(qp, next, state))
      return { status: 'infeasible', x, active, multipliers, iterations: iteration };
  }
  return { status: 'not-converged', ...state, iterations: maxIterations };
}

interface DualState {
  n: number;
  x: Float64Array;
  /** J, n × n by rows: column k is direction k; the first `active.length` span the active normals. */
  basis: Float64Array;
  /** R, column k at triangle[k * n ...]. */
  triangle: Float64Array;
  active: number[];
  multipliers: number[];
}

/** L⁻ᵀ of the Cholesky factor of H. */
function startBasis(hessian: Float64Array, n: number): Float64Array {
  const l = new Float64Array(n * n);
  for (let i = 0; i < n; i++) {
    for (let j = 0; j <= i; j++) {
      let sum = hessian[i * n + j];
      for (let k = 0; k < j; k++) sum -= l[i * n + k] * l[j * n + k];
      if (i === j && !(sum > 0)) throw new Error(`pivot ${i} of the Hessian is ${sum}`);
      l[i * n + j] = i === j ? Math.sqrt(sum) : sum / l[j * n + j];
    }
  }
  // inverse of L by columns, stored transposed
  const basis = new Float64Array(n * n);
  for (let column = 0; column < n; column++) {
    for (let i = column; i < n; i++) {
      let sum = i === column ? 1 : 0;
      for (let k = column; k < i; k++) sum -= l[i * n + k] * basis[column * n + k];
      basis[column * n + i] = sum / l[i * n + i];
    }
  }
  return basis;
}

/** -J Jᵀ c. */
function freeMinimum(basis: Float64Array, linear: Float64Array): Float64Array {
  const n = linear.length;
  const x = new Float64Array(n);
  for (let k = 0; k < n; k++) {
    let along = 0;
    for (let i = 0; i < n; i++) along += basis[i * n + k] * linear[i];
    for (let i = 0; i < n; i++) x[i] -= basis[i * n + k] * along;
  }
  return x;
}

function mostViolated({ rows, bounds }: ConvexQp, scale: readonly number[], state: DualState): number {
  let worst = -1;
  let worstBy = -1e-11;
  for (let i = 0; i < rows.length; i++) {
    const by = (dot(rows[i], state.x) - bounds[i]) / (scale[i] + Math.abs(bounds[i]));
    if (by < worstBy && !state.active.includes(i)) {
      worstBy = by;
      worst = i;
    }
  }
  return worst;
}

/** Moves along the dual path until constraint `p` holds; false where it cannot beside the others. */
function takeIn(qp: ConvexQp, p: number, state: DualState): boolean {
  const { n, x, active, multipliers } = state;
  const normal = qp.rows[p];
  let multiplier = 0;
  for (let drops = 0; drops <= 4 * n + qp.rows.length; drops++) {
    const d = inBasis(state, normal);
    const z = acrossActive(state, d);
    const r = backSubstitute(state, d);
    let dualStep = Number.POSITIVE_INFINITY;
    let blocking = -1;
    for (let k = 0; k < active.length; k++) {
      if (r[k] > 1e-13 && multipliers[k] / r[k] < dualStep) {
        dualStep = multipliers[k] / r[k];
        blocking = k;
      }
    }
    const slope = dot(z, normal);
    const free = slope > 1e-13 * Math.max(1e-300, dot(d, d));
    const fullStep = free ? (qp.bounds[p] - dot(normal, x)) / slope : Number.POSITIVE_INFINITY;
    const step = Math.min(dualStep, fullStep);
    if (step === Number.POSITIVE_INFINITY) return false;
    if (free) for (let i = 0; i < n; i++) x[i] += step * z[i];
    for (let k = 0; k < active.length; k++) multipliers[k] -= step * r[k];
    multiplier += step;
    if (fullStep <= dualStep) {
      addActive(state, d);
      active.push(p);
      multipliers.push(multiplier);
      return true;
    }
    dropActive(state, blocking);
  }
  return false;
}

/** Jᵀ a. */
function inBasis({ n, basis }: DualState, normal: Float64Array): Float64Array {
  const d = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    const a = normal[i];
    if (a !== 0) for (let k = 0; k < n; k++) d[k] += basis[i * n + k] * a;
  }
  return d;
}

/** Primal step direction: the part of the normal that leaves the active constraints alone, in the metric of H. */
function acrossActive({ n, basis, active }: DualState, d: Float64Array): Float64Array {
  const z = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    let sum = 0;
    for (let k = active.length; k < n; k++) sum += basis[i * n + k] * d[k];
    z[i] = sum;
  }
  return z;
}

/** R⁻¹ of the leading part of d: how the active multipliers answer. */
function backSubstitute({ n, triangle, active }: DualState, d: Float64Array): Float64Array {
  const r = new Float64Array(active.length);
  for (let k = active.length - 1; k >= 0; k--) {
    let sum = d[k];
    for (let j = k + 1; j < active.length; j++) sum -= triangle[j * n + k] * r[j];
    r[k] = sum / triangle[k * n + k];
  }
  return r;
}

/** Rotates the free directions so that the new normal lies along the first of them. */
function addActive(state: DualState, d: Float64Array): void {
  const { n, basis, triangle, active } = state;
  const q = active.length;
  for (let k = n - 1; k > q; k--) {
    if (d[k] === 0) continue;
    const size = Math.hypot(d[k - 1], d[k]);
    rotateColumns(basis, n, k - 1, d[k - 1] / size, d[k] / size);
    d[k - 1] = size;
    d[k] = 0;
  }
  for (let k = 0; k <= q; k++) triangle[q * n + k] = d[k];
}

function dropActive(state: DualState, dropped: number): void {
  const { n, basis, triangle, active, multipliers } = state;
  active.splice(dropped, 1);
  multipliers.splice(dropped, 1);
  const q = active.length;
  for (let k = dropped; k < q; k++) {
    for (let i = 0; i <= k + 1; i++) triangle[k * n + i] = triangle[(k + 1) * n + i];
  }
  // the columns behind the gap have one entry below the diagonal: rotate it away
  for (let k = dropped; k < q; k++) {
    const size = Math.hypot(triangle[k * n + k], triangle[k * n + k + 1]);
    if (size === 0) continue;
    const c = triangle[k * n + k] / size;
    const s = triangle[k * n + k + 1] / size;
    for (let j = k; j < q; j++) {
      const high = triangle[j * n + k];
      const low = triangle[j * n + k + 1];
      triangle[j * n + k] = c * high + s * low;
      triangle[j * n + k + 1] = c * low - s * high;
    }
    rotateColumns(basis, n, k, c, s);
  }
}

/** Columns k and k + 1 of J become c·k + s·(k + 1) and c·(k + 1) - s·k. */
function rotateColumns(basis: Float64Array, n: number, k: number, c: number, s: number): void {
  for (let i = 0; i < n; i++) {
    const a = basis[i * n + k];
    const b = basis[i * n + k + 1];
    basis[i * n + k] = c * a + s * b;
    basis[i * n + k + 1] = c * b - s * a;
  }
}
