/**
 * Finds the equilibrium that the rod reaches when the whole load grows from nothing: Euler predictor along
 * the load, Newton corrector, step length from the turn of the fastest-turning node. On the way the Hessian
 * must stay positive definite (a stable minimum of energy). Where it does not, the rod has no equilibrium
 * nearby that it could have followed to: the solver lets it fall to the next minimum of energy and says so.
 */
import { factorChained, solveChained } from '../numerics/chained-tridiagonal.ts';
import { assemble, type Loading, placeNodes, type Workspace } from './equilibrium.ts';
import { fallToMinimum } from './fall-to-minimum.ts';
import type { Mesh } from './mesh.ts';

export interface FollowOptions {
  /** Largest predicted turn of any node in one load step. */
  stepRad: number;
  /** How far Newton may turn any node from a state that is known from a nearby problem. */
  nearbyRad: number;
  /** A rod that turns by more than this when a branch ends has snapped to another bend. */
  snapRad: number;
  /** Newton has converged when no node turns by more than this. */
  toleranceRad: number;
  /** The same on the way up, where the next step corrects what is left. */
  wayToleranceRad: number;
  /** Bound on Newton steps in all; one load step may run over it by `fallIterations`. */
  maxIterations: number;
  /** A load step smaller than this share of the load carried means the branch has ended. */
  smallestStep: number;
  /** Share of the load carried that is added where a branch has ended, before the rod falls. */
  stepPastEnd: number;
  /** Bound on the steps of one fall. */
  fallIterations: number;
  /** A span shorter than this share of the rod's length has closed: two rings touch. */
  closedSpan: number;
}
export const followDefaults: FollowOptions = {
  stepRad: 0.9,
  nearbyRad: 0.5,
  snapRad: 0.5,
  toleranceRad: 1e-9,
  wayToleranceRad: 1e-3,
  maxIterations: 2000,
  smallestStep: 1e-6,
  stepPastEnd: 1e-3,
  fallIterations: 300,
  closedSpan: 1e-6,
};

export interface FollowResult {
  status: 'converged' | 'branch-lost' | 'not-converged';
  /** Share of the load carried when the followed branch ended; 1 where it did not. */
  followedTo: number;
  /** Share of the load of the state handed back. */
  factor: number;
  iterations: number;
  /** Span (counted from the tip) whose ends the line has pulled together; there is no equilibrium beyond. */
  closedSpan?: number;
}

/** Angles of the unloaded rod. */
export function restAngles(mesh: Mesh, buttAngleRad: number, theta: Float64Array): void {
  theta[0] = buttAngleRad;
  for (let e = 1; e <= mesh.count; e++) theta[e] = theta[e - 1] + mesh.restTurn[e];
}

/** Follows the load up from the unloaded rod; the state is left in `work`. */
export function followLoad(
  mesh: Mesh,
  loading: Loading,
  buttAngleRad: number,
  work: Workspace,
  options: FollowOptions = followDefaults,
): FollowResult {
  restAngles(mesh, buttAngleRad, work.theta);
  const path: FollowResult = { factor: 0, followedTo: 1, iterations: 0, status: 'converged' };
  const before = new Float64Array(mesh.count + 1);
  const direction = new Float64Array(mesh.count);
  let largestStep = 1;
  placeNodes(mesh, loading.line, work);
  while (path.factor < 1 && path.iterations < options.maxIterations) {
    before.set(work.theta);
    const speed = loadTangent(mesh, loading, path.factor, work, direction);
    const wanted = Math.min(1 - path.factor, largestStep, options.stepRad / Math.max(speed, 1e-300));
    const step = climb(mesh, loading, path, { before, direction, wanted }, work, options);
    largestStep = step > 0 ? 4 * step : 1;
    if (step > 0) continue;
    work.theta.set(before);
    if (path.iterations < options.maxIterations) fall(mesh, loading, path, before, work, options);
    if (path.closedSpan !== undefined) break;
  }
  if (path.factor < 1) path.status = 'not-converged';
  return path;
}

/**
 * Corrects a state known from a nearby problem (a guide moved, a load changed) at the full load. False where
 * Newton leaves its neighbourhood or meets no stable equilibrium: then follow the load from the start.
 */
export function followFromNearby(
  mesh: Mesh,
  loading: Loading,
  work: Workspace,
  options: FollowOptions = followDefaults,
): { converged: boolean; iterations: number } {
  return correct(mesh, loading, 1, work, options, options.nearbyRad);
}

interface Climb {
  before: Float64Array;
  direction: Float64Array;
  wanted: number;
}

/** One load step along `direction`, shortened until Newton converges; 0 where the branch has ended. */
function climb(
  mesh: Mesh,
  loading: Loading,
  path: FollowResult,
  { before, direction, wanted }: Climb,
  work: Workspace,
  options: FollowOptions,
): number {
  const smallest = options.smallestStep * Math.max(path.factor, wanted);
  for (let step = wanted; step >= smallest; step *= 0.35) {
    if (path.iterations >= options.maxIterations) return 0;
    for (let i = 0; i < mesh.count; i++) work.theta[i + 1] = before[i + 1] + step * direction[i];
    const target = 1 - path.factor - step < 1e-12 ? 1 : path.factor + step;
    const newton = correct(mesh, loading, target, work, options, 0.6 * options.stepRad);
    path.iterations += newton.iterations;
    if (newton.converged) {
      path.factor = target;
      return step;
    }
  }
  return 0;
}

/** The branch has ended: a little more load, and the rod falls to the next minimum of energy. */
function fall(
  mesh: Mesh,
  loading: Loading,
  path: FollowResult,
  before: Float64Array,
  work: Workspace,
  options: FollowOptions,
): void {
  const endedAt = path.factor;
  path.factor = Math.min(1, path.factor + options.stepPastEnd * Math.max(path.factor, options.smallestStep));
  const fallen = fallToMinimum(mesh, loading, path.factor, work, options);
  path.iterations += fallen.iterations;
  path.closedSpan = closedSpanOf(mesh, loading, work, options);
  if (!fallen.converged || path.closedSpan !== undefined) {
    if (path.closedSpan !== undefined || path.iterations >= options.maxIterations) {
      path.factor = endedAt;
      work.theta.set(before);
      placeNodes(mesh, loading.line, work);
      return;
    }
  }
  if (path.followedTo === 1 && largestTurnBetween(before, work.theta) > options.snapRad) {
    path.followedTo = endedAt;
    path.status = 'branch-lost';
  }
}

function closedSpanOf(
  mesh: Mesh,
  loading: Loading,
  { spanLengthM }: Workspace,
  options: FollowOptions,
): number | undefined {
  if (!loading.line) return undefined;
  const shortest = options.closedSpan * mesh.fromTipM[0];
  for (let k = 0; k < spanLengthM.length; k++) if (spanLengthM[k] < shortest) return k;
  return undefined;
}

/** d(angles)/d(load factor) at the present equilibrium; returns its largest entry. */
function loadTangent(
  mesh: Mesh,
  loading: Loading,
  factor: number,
  work: Workspace,
  direction: Float64Array,
): number {
  assemble(mesh, loading, factor, work);
  factorChained(work.hessian);
  for (let i = 0; i < mesh.count; i++) direction[i] = -work.loadGradient[i];
  solveChained(work.hessian, direction, direction);
  let largest = 0;
  for (let i = 0; i < mesh.count; i++) largest = Math.max(largest, Math.abs(direction[i]));
  return largest;
}

/** Newton at a fixed load, confined to `reachRad` around where it starts; refuses unstable states. */
function correct(
  mesh: Mesh,
  loading: Loading,
  factor: number,
  work: Workspace,
  options: FollowOptions,
  reachRad: number,
): { converged: boolean; iterations: number } {
  const { theta, bendGradient, loadGradient, hessian } = work;
  const step = loadGradient; // the gradient is spent once the step is known
  const toleranceRad = factor === 1 ? options.toleranceRad : options.wayToleranceRad;
  let travelled = 0;
  let before = 1;
  for (let iteration = 1; iteration <= 12; iteration++) {
    placeNodes(mesh, loading.line, work);
    assemble(mesh, loading, factor, work);
    const stable = factorChained(hessian);
    for (let i = 0; i < mesh.count; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
    solveChained(hessian, step, step);
    let largest = 0;
    for (let i = 0; i < mesh.count; i++) {
      theta[i + 1] += step[i];
      largest = Math.max(largest, Math.abs(step[i]));
    }
    travelled += largest;
    if (!(travelled <= reachRad)) return { converged: false, iterations: iteration };
    // Newton squares its step: with s, s' the last two, the next is about s³ / s'²
    const next = before < 0.01 ? (30 * largest ** 3) / before ** 2 : largest;
    if (largest <= toleranceRad || next <= toleranceRad) {
      placeNodes(mesh, loading.line, work);
      const converged = stable && closedSpanOf(mesh, loading, work, options) === undefined;
      return { converged, iterations: iteration };
    }
    before = largest;
  }
  return { converged: false, iterations: 12 };
}

function largestTurnBetween(a: Float64Array, b: Float64Array): number {
  let largest = 0;
  for (let j = 0; j < a.length; j++) largest = Math.max(largest, Math.abs(a[j] - b[j]));
  return largest;
}
