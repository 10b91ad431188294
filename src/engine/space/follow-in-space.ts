/**
 * The bend in space that the rod reaches when the whole load grows from nothing: as bend/follow.ts, with a small turn
 * of three parts per node in place of an angle. Only stable minima are accepted; where the branch ends the rod falls.
 */
import { type FollowOptions, type FollowResult, followDefaults } from '../bend/follow.ts';
import { factorBlocks } from '../numerics/factor-blocks.ts';
import { solveBlocks } from '../numerics/solve-blocks.ts';
import { assembleInSpace } from './equilibrium-in-space.ts';
import { fallInSpace } from './fall-in-space.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { placeState, restState, type SpaceLoading, type SpaceState } from './state.ts';
import { largestPart, moveFrom } from './turn.ts';

/** Follows the load up from the unloaded rod; the state is left in `state`. */
export function followInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  state: SpaceState,
  options: FollowOptions = followDefaults,
): FollowResult {
  restState(mesh, loading, state);
  placeState(mesh, loading.line, state);
  const path: FollowResult = { factor: 0, followedTo: 1, iterations: 0, status: 'converged' };
  const climbing = { mesh, loading, state, options, path };
  const before = state.q.slice();
  const direction = new Float64Array(3 * mesh.count);
  let largestStep = 1;
  let climbed = false;
  while (path.factor < 1 && path.iterations < options.maxIterations) {
    before.set(state.q);
    const speed = loadTangent(climbing, direction, climbed);
    const wanted = Math.min(1 - path.factor, largestStep, options.stepRad / Math.max(speed, 1e-300));
    const step = climb(climbing, before, direction, wanted);
    climbed = step > 0;
    largestStep = climbed ? 4 * step : 1;
    if (climbed) continue;
    state.q.set(before);
    if (path.iterations < options.maxIterations) fall(climbing, before);
    if (path.closedSpan !== undefined) break;
  }
  if (path.factor < 1) path.status = 'not-converged';
  return path;
}

/** Corrects a state known from a nearby problem at the full load; false where it leaves its neighbourhood. */
export function followNearbyInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  state: SpaceState,
  options: FollowOptions = followDefaults,
): { converged: boolean; iterations: number } {
  return correct({ mesh, loading, state, options }, 1, options.nearbyRad);
}

/**
 * One step with the factor of the last one: true to first order in how far the guides have moved since, at a third
 * of a Newton step's cost.
 */
export function nudgeInSpace(mesh: SpaceMesh, loading: SpaceLoading, state: SpaceState): void {
  const { bendGradient, loadGradient, hessian } = state;
  placeState(mesh, loading.line, state);
  assembleInSpace(mesh, loading, 1, state, true);
  for (let i = 0; i < loadGradient.length; i++) loadGradient[i] = -(bendGradient[i] + loadGradient[i]);
  solveBlocks(hessian, loadGradient, loadGradient);
  moveFrom(state.q, loadGradient, 1, state.q);
  placeState(mesh, loading.line, state);
}

interface Problem {
  mesh: SpaceMesh;
  loading: SpaceLoading;
  state: SpaceState;
  options: FollowOptions;
}
interface Climbing extends Problem {
  path: FollowResult;
}

/** One load step along `direction`, shortened until Newton converges; 0 where the branch has ended. */
function climb(climbing: Climbing, before: Float64Array, direction: Float64Array, wanted: number): number {
  const { state, options, path } = climbing;
  const smallest = options.smallestStep * Math.max(path.factor, wanted);
  for (let step = wanted; step >= smallest; step *= 0.35) {
    if (path.iterations >= options.maxIterations) return 0;
    moveFrom(before, direction, step, state.q);
    const target = 1 - path.factor - step < 1e-12 ? 1 : path.factor + step;
    const newton = correct(climbing, target, 0.6 * options.stepRad);
    path.iterations += newton.iterations;
    if (newton.converged) {
      path.factor = target;
      return step;
    }
  }
  return 0;
}

/** The branch has ended: a little more load, and the rod falls to the next minimum of energy. */
function fall({ mesh, loading, state, options, path }: Climbing, before: Float64Array): void {
  const endedAt = path.factor;
  path.factor = Math.min(1, path.factor + options.stepPastEnd * Math.max(path.factor, options.smallestStep));
  const fallen = fallInSpace(mesh, loading, path.factor, state, options);
  path.iterations += fallen.iterations;
  path.closedSpan = closedSpanOf(mesh, loading, state, options);
  const lost = !fallen.converged && path.iterations >= options.maxIterations;
  if (path.closedSpan !== undefined || lost) {
    path.factor = endedAt;
    state.q.set(before);
    placeState(mesh, loading.line, state);
    return;
  }
  if (path.followedTo === 1 && largestTurnBetween(before, state.q) > options.snapRad) {
    path.followedTo = endedAt;
    path.status = 'branch-lost';
  }
}

function closedSpanOf(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  { spanLengthM }: SpaceState,
  options: FollowOptions,
): number | undefined {
  if (!loading.line) return undefined;
  const shortest = options.closedSpan * mesh.fromTipM[0];
  const k = spanLengthM.findIndex((length) => length < shortest);
  return k < 0 ? undefined : k;
}

/** d(turns)/d(load factor) at the present equilibrium, by the factor that led to it where there is one. */
function loadTangent(
  { mesh, loading, state, path }: Climbing,
  direction: Float64Array,
  again: boolean,
): number {
  assembleInSpace(mesh, loading, path.factor, state, again);
  if (!again) factorBlocks(state.hessian);
  for (let i = 0; i < direction.length; i++) direction[i] = -state.loadGradient[i];
  solveBlocks(state.hessian, direction, direction);
  return largestPart(direction);
}

/** A step shorter than this is followed by one with the same factor. */
const againRad = 2e-3;

/** Newton at a fixed load, confined to `reachRad` around where it starts; refuses unstable states. */
function correct(
  { mesh, loading, state, options }: Problem,
  factor: number,
  reachRad: number,
): { converged: boolean; iterations: number } {
  const { bendGradient, loadGradient, hessian } = state;
  const step = loadGradient; // the gradient is spent once the step is known
  const toleranceRad = factor === 1 ? options.toleranceRad : options.wayToleranceRad;
  let travelled = 0;
  let before = 1;
  let stable = true;
  for (let iteration = 1; iteration <= 12; iteration++) {
    // so near the bend the last factor is as good as a new one, at a third of the cost
    const again = before < againRad;
    placeState(mesh, loading.line, state);
    assembleInSpace(mesh, loading, factor, state, again);
    if (!again) stable = factorBlocks(hessian) === 0;
    for (let i = 0; i < step.length; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
    solveBlocks(hessian, step, step);
    moveFrom(state.q, step, 1, state.q);
    const largest = largestPart(step);
    travelled += largest;
    if (!(travelled <= reachRad)) return { converged: false, iterations: iteration };
    // Newton squares its step: with s, s' the last two, the next is about s³ / s'²; an old factor shrinks it by s'
    const next = again ? 30 * largest * before : before < 0.01 ? (30 * largest ** 3) / before ** 2 : largest;
    if (largest <= toleranceRad || next <= toleranceRad) {
      placeState(mesh, loading.line, state);
      const converged = stable && closedSpanOf(mesh, loading, state, options) === undefined;
      return { converged, iterations: iteration };
    }
    before = largest;
  }
  return { converged: false, iterations: 12 };
}

function largestTurnBetween(a: Float64Array, b: Float64Array): number {
  let least = 1;
  for (let j = 0; j < a.length; j += 4) {
    const same = a[j] * b[j] + a[j + 1] * b[j + 1] + a[j + 2] * b[j + 2] + a[j + 3] * b[j + 3];
    least = Math.min(least, Math.abs(same));
  }
  return 2 * Math.acos(least);
}
