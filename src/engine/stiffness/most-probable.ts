/**
 * The most probable unknowns, and how the readings narrow them.
 *
 *   minimise  Φ(u) = ½ |e(u)|² + ½ |u|²,   e = (measured - predicted(z(u)) - Σ extra) / σ
 *
 * by Gauss-Newton steps with Levenberg-Marquardt damping; u are the standardised unknowns (unknowns.ts), so
 * the normal matrix A = I + ÃᵀÃ, Ã = ∂predicted/∂u / σ, is never singular. At the minimum A⁻¹ is the posterior
 * covariance (Laplace). Far from the minimum the readings' σ is enlarged and let down step by step
 * (tempering), which keeps the first steps inside the range where the linearisation means something.
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import { type BenchModel, emptyPrediction, predictBench } from './bench-model.ts';
import type { Prediction } from './clamp-model.ts';
import { rowByStandard, type Unknowns, valuesOf } from './unknowns.ts';

/** A pattern of errors in the data with an unknown amplitude, one of `unknowns.extra`. */
export type ExtraPattern = { datum: number; amount: number }[];

export interface FitProblem {
  readonly model: BenchModel;
  readonly unknowns: Unknowns;
  /** Standard deviation per datum; infinite: not used. */
  readonly sigma: Float64Array;
  /** One per unknown of `unknowns.extra`. */
  readonly extras: readonly ExtraPattern[];
}

export interface MostProbable {
  converged: boolean;
  /** Whether every test found its equilibrium. */
  equilibria: boolean;
  iterations: number;
  u: Float64Array;
  z: Float64Array;
  objective: number;
  /** Standardised misfit e per datum. */
  misfit: Float64Array;
  prediction: Prediction;
  /** Ã, one row per datum. */
  design: Float64Array;
  /** Cholesky factor of A. */
  factor: Float64Array;
}

export interface SearchOptions {
  maxIterations: number;
  /** Converged when Φ falls by less than this. */
  tolerance: number;
  /** Largest change of any ln EI in one step. */
  stepLog: number;
}
export const searchDefaults: SearchOptions = { maxIterations: 60, tolerance: 1e-4, stepLog: 1 };

export function findMostProbable(
  problem: FitProblem,
  start: Float64Array,
  options: SearchOptions = searchDefaults,
): MostProbable {
  const { unknowns } = problem;
  const n = unknowns.size;
  let state = evaluate(problem, start);
  let damping = 0;
  let iterations = 0;
  let converged = false;
  const step = new Float64Array(n);
  while (iterations < options.maxIterations && !converged) {
    iterations++;
    dampedStep(state, damping, n, step);
    shortenStep(unknowns, step, options.stepLog);
    const next = evaluate(
      problem,
      state.u.map((value, i) => value + step[i]),
    );
    const fall = state.objective - next.objective;
    if (next.equilibria >= state.equilibria && fall > -1e-9 * (1 + state.objective)) {
      converged = damping === 0 && fall < options.tolerance;
      damping = damping > 1e-3 ? 0.2 * damping : 0;
      state = next;
    } else {
      // the normal matrix is at least I, so damping counts against 1
      damping = Math.max(4 * damping, 1);
      if (damping > 1e12) break;
    }
  }
  return {
    ...state,
    converged: converged && state.equilibria === 1,
    equilibria: state.equilibria === 1,
    iterations,
  };
}

type State = Omit<MostProbable, 'converged' | 'iterations' | 'equilibria'> & { equilibria: 0 | 1 };

function evaluate(problem: FitProblem, u: Float64Array): State {
  const { model, unknowns, sigma, extras } = problem;
  const n = unknowns.size;
  const z = new Float64Array(n);
  valuesOf(unknowns, u, z);
  const prediction = emptyPrediction(model, unknowns);
  const equilibria = predictBench(model, unknowns, z, prediction) ? 1 : 0;
  extras.forEach((pattern, k) => {
    for (const { datum, amount } of pattern) {
      prediction.value[datum] += amount * z[unknowns.extra.start + k];
      prediction.jacobian[datum * n + unknowns.extra.start + k] += amount;
    }
  });
  const design = prediction.jacobian.slice();
  const misfit = new Float64Array(model.data.length);
  let objective = 0;
  for (let d = 0; d < misfit.length; d++) {
    const row = design.subarray(d * n, (d + 1) * n);
    rowByStandard(unknowns, row);
    const weight = 1 / sigma[d];
    for (let k = 0; k < n; k++) row[k] *= weight;
    misfit[d] = (model.data[d].value - prediction.value[d]) * weight;
    objective += 0.5 * misfit[d] * misfit[d];
  }
  for (let k = 0; k < n; k++) objective += 0.5 * u[k] * u[k];
  const factor = normalMatrix(design, misfit.length, n);
  factorOrThrow(factor, n);
  return { equilibria, u, z, objective, misfit, prediction, design, factor };
}

/** I + ÃᵀÃ, lower triangle. */
function normalMatrix(design: Float64Array, rows: number, n: number): Float64Array {
  const a = new Float64Array(n * n);
  for (let d = 0; d < rows; d++) {
    const at = d * n;
    for (let i = 0; i < n; i++) {
      const value = design[at + i];
      if (value === 0) continue;
      for (let j = 0; j <= i; j++) a[i * n + j] += value * design[at + j];
    }
  }
  for (let i = 0; i < n; i++) a[i * n + i] += 1;
  return a;
}

function factorOrThrow(a: Float64Array, n: number): void {
  if (!factorCholesky(a, n)) throw new Error('the normal matrix of the fit is not positive definite');
}

/** (A + damping I) step = Ãᵀ e - u. */
function dampedStep(state: State, damping: number, n: number, step: Float64Array): void {
  const { design, misfit, u } = state;
  for (let k = 0; k < n; k++) step[k] = -u[k];
  for (let d = 0; d < misfit.length; d++) {
    for (let k = 0; k < n; k++) step[k] += design[d * n + k] * misfit[d];
  }
  let factor = state.factor;
  if (damping > 0) {
    factor = normalMatrix(design, misfit.length, n);
    for (let i = 0; i < n; i++) factor[i * n + i] += damping;
    factorOrThrow(factor, n);
  }
  solveLower(factor, n, step, step);
  solveUpper(factor, n, step, step);
}

function shortenStep(unknowns: Unknowns, step: Float64Array, stepLog: number): void {
  const change = new Float64Array(unknowns.size);
  valuesOf({ ...unknowns, mean: new Float64Array(unknowns.size) }, step, change);
  const { start, size } = unknowns.stiffness;
  let largest = 0;
  for (let i = start; i < start + size; i++) largest = Math.max(largest, Math.abs(change[i]));
  if (largest > stepLog) for (let k = 0; k < step.length; k++) step[k] *= stepLog / largest;
}
