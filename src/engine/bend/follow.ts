/**
 * Finds the equilibrium that the rod reaches when the whole load grows from nothing: Euler predictor along
 * the load, Newton corrector, step length from the turn of the fastest-turning node. On the way the Hessian
 * must stay positive definite (a stable minimum of energy). Where it does not, the rod has no equilibrium
 * nearby that it could have followed to: the solver lets it fall to the next minimum of energy and says so.
 */
import { factorChained, solveChained } from '../numerics/chained-tridiagonal.ts';
import { assemble, type Loading, placeNodes, type Workspace } from './equilibrium.ts';
import { fallInPlane } from './fall-in-plane.ts';
import {
  type Climber,
  closedSpanOf,
  type FollowOptions,
  type FollowResult,
  followDefaults,
  followPath,
} from './follow-path.ts';
import type { Mesh } from './mesh.ts';

export { type FollowOptions, type FollowResult, followDefaults } from './follow-path.ts';

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
  placeNodes(mesh, loading.line, work);
  return followPath(climberOf(mesh, loading, work, options), options);
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

function climberOf(mesh: Mesh, loading: Loading, work: Workspace, options: FollowOptions): Climber {
  const kept = new Float64Array(mesh.count + 1);
  const direction = new Float64Array(mesh.count);
  return {
    tangent: (factor) => loadTangent(mesh, loading, factor, work, direction),
    keep: () => kept.set(work.theta),
    backToKept: () => {
      work.theta.set(kept);
      placeNodes(mesh, loading.line, work);
    },
    stepFromKept: (share) => {
      for (let i = 0; i < mesh.count; i++) work.theta[i + 1] = kept[i + 1] + share * direction[i];
    },
    correct: (factor, reachRad) => correct(mesh, loading, factor, work, options, reachRad),
    fall: (factor) => fallInPlane(mesh, loading, factor, work, options),
    closedSpan: () => closedSpanIn(mesh, loading, work, options),
    turnSinceKept: () => largestTurnBetween(kept, work.theta),
  };
}

function closedSpanIn(
  mesh: Mesh,
  { line }: Loading,
  work: Workspace,
  options: FollowOptions,
): number | undefined {
  return line && closedSpanOf(work.spanLengthM, mesh.fromTipM[0], options);
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
      const converged = stable && closedSpanIn(mesh, loading, work, options) === undefined;
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
