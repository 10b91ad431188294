/**
 * The most probable unknowns, and how the readings narrow them.
 *
 *   minimise  Φ(u) = Σ ρ(e(u)) + ½ |u|²,   e = (measured - predicted(z(u)) - Σ extra) / σ
 *
 * by Gauss-Newton steps with Levenberg-Marquardt damping; u are the standardised unknowns (unknowns.ts), so
 * the normal matrix A = I + ÃᵀÃ, Ã = ∂predicted/∂u / σ, is never singular. At the minimum A⁻¹ is the posterior
 * covariance (Laplace). ρ(e) = ½ e², and from 4 standard deviations on grows only linearly (Huber 1964): a
 * gross error must not bend the blank out of all reason before it has been found. Its weight ρ'(e)/e is in
 * the rows of Ã and in the misfit.
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import { gramMatrix } from '../numerics/gram-matrix.ts';
import { type BenchModel, emptyPrediction, predictBench } from './bench-model.ts';
import type { Prediction } from './clamp-derivatives.ts';
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
  /** Not converged, and most readings far off: no state of the unknowns comes near them; or above `giveUpAt`. */
  hopeless: boolean;
  /** Whether every test found its equilibrium. */
  equilibria: boolean;
  iterations: number;
  u: Float64Array;
  z: Float64Array;
  objective: number;
  /** Standardised misfit e per datum, times √weight. */
  misfit: Float64Array;
  /** Weight of each datum, 1 where it agrees within 4 standard deviations. */
  weight: Float64Array;
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
  /** Steps after which a search with most readings far off is given up. */
  patience: number;
  /** Above this Φ a search is given up after so many steps. */
  giveUpAt: number;
  giveUpAfter: number;
  /** Standard deviations from which a misfit counts linearly. */
  huber: number;
}
export const searchDefaults: SearchOptions = {
  maxIterations: 40,
  tolerance: 1e-3,
  stepLog: 1,
  patience: 15,
  giveUpAt: Number.POSITIVE_INFINITY,
  giveUpAfter: 15,
  huber: 4,
};

export function findMostProbable(
  problem: FitProblem,
  start: Float64Array,
  options: SearchOptions = searchDefaults,
): MostProbable {
  const { unknowns } = problem;
  const n = unknowns.size;
  let state = evaluate(problem, start, options.huber);
  let factor = factorNormalMatrix(state.design, n, 0);
  let damping = 0;
  let iterations = 0;
  let converged = false;
  let hopeless = false;
  const step = new Float64Array(n);
  while (iterations < options.maxIterations && !converged && !hopeless) {
    iterations++;
    newtonStep(state, damping > 0 ? factorNormalMatrix(state.design, n, damping) : factor, n, step);
    shortenStep(unknowns, step, options.stepLog);
    const next = evaluate(
      problem,
      state.u.map((value, i) => value + step[i]),
      options.huber,
    );
    const fall = state.objective - next.objective;
    if (next.equilibria >= state.equilibria && fall > -1e-9 * (1 + state.objective)) {
      converged = damping === 0 && fall < options.tolerance;
      damping = damping > 1e-3 ? 0.2 * damping : 0;
      state = next;
      factor = factorNormalMatrix(state.design, n, 0);
    } else {
      // the normal matrix is at least I, so damping counts against 1
      damping = Math.max(4 * damping, 1);
      if (damping > 1e12) break;
    }
    const isOutdone = iterations >= options.giveUpAfter && state.objective > options.giveUpAt;
    const isLost = iterations >= options.patience && mostFarOff(state.weight);
    hopeless = !converged && (isOutdone || isLost);
  }
  const equilibria = state.equilibria === 1;
  return {
    ...state,
    factor,
    converged: converged && equilibria,
    hopeless,
    equilibria,
    iterations,
  };
}

function mostFarOff(weight: Float64Array): boolean {
  return weight.reduce((count, w) => count + (w < 1 ? 1 : 0), 0) > 0.4 * weight.length;
}

type State = Omit<MostProbable, 'factor' | 'converged' | 'hopeless' | 'iterations' | 'equilibria'> & {
  equilibria: 0 | 1;
};

function evaluate(problem: FitProblem, u: Float64Array, huber: number): State {
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
  const weight = new Float64Array(model.data.length);
  let objective = 0;
  for (let d = 0; d < misfit.length; d++) {
    const row = design.subarray(d * n, (d + 1) * n);
    if (sigma[d] === Number.POSITIVE_INFINITY) {
      row.fill(0);
      weight[d] = 1;
      continue;
    }
    rowByStandard(unknowns, row);
    const e = (model.data[d].value - prediction.value[d]) / sigma[d];
    const size = Math.abs(e);
    weight[d] = size > huber ? huber / size : 1;
    objective += size > huber ? huber * (size - 0.5 * huber) : 0.5 * size * size;
    const scale = Math.sqrt(weight[d]);
    misfit[d] = scale * e;
    for (let k = 0; k < n; k++) row[k] *= scale / sigma[d];
  }
  for (let k = 0; k < n; k++) objective += 0.5 * u[k] * u[k];
  return { equilibria, u, z, objective, misfit, weight, prediction, design };
}

/**
 * Cholesky factor of I + ÃᵀÃ + damping I. Where readings are so sensitive that rounding drowns the I, a little
 * of the largest diagonal is added: the answer then claims to know less, never more.
 */
export function factorNormalMatrix(design: Float64Array, n: number, damping: number): Float64Array {
  const normal = gramMatrix(design, n);
  for (let i = 0; i < n; i++) normal[i * n + i] += 1 + damping;
  return factorNormal(normal, n);
}

/** Takes `normal` over. */
export function factorNormal(normal: Float64Array, n: number): Float64Array {
  let largest = 0;
  for (let i = 0; i < n; i++) largest = Math.max(largest, normal[i * n + i]);
  for (let ridge = 1e-14; ridge < 1; ridge *= 100) {
    const factor = normal.slice();
    if (factorCholesky(factor, n)) return factor;
    for (let i = 0; i < n; i++) normal[i * n + i] += ridge * largest;
  }
  throw new Error(`the normal matrix of the fit has no factor; its largest entry is ${largest}`);
}

/** A step = Ãᵀ e - u. */
function newtonStep({ design, misfit, u }: State, factor: Float64Array, n: number, step: Float64Array): void {
  for (let k = 0; k < n; k++) step[k] = -u[k];
  for (let d = 0; d < misfit.length; d++) {
    for (let k = 0; k < n; k++) step[k] += design[d * n + k] * misfit[d];
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
