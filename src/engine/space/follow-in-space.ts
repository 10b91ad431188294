/**
 * The bend in space that the rod reaches when the whole load grows from nothing: as bend/follow.ts, with a small turn
 * of three parts per node in place of an angle. Only stable minima are accepted; where the branch ends the rod falls.
 */
import {
  type Climber,
  closedSpanOf,
  type FollowOptions,
  type FollowResult,
  followDefaults,
  followPath,
} from '../bend/follow-path.ts';
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
  return followPath(climberOf({ mesh, loading, state, options }), options);
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

function climberOf(problem: Problem): Climber {
  const { mesh, loading, state, options } = problem;
  const kept = state.q.slice();
  const direction = new Float64Array(3 * mesh.count);
  return {
    tangent: (factor, climbed) => loadTangent(problem, factor, direction, climbed),
    keep: () => kept.set(state.q),
    backToKept: () => {
      state.q.set(kept);
      placeState(mesh, loading.line, state);
    },
    stepFromKept: (share) => moveFrom(kept, direction, share, state.q),
    correct: (factor, reachRad) => correct(problem, factor, reachRad),
    fall: (factor) => fallInSpace(mesh, loading, factor, state, options),
    closedSpan: () => closedSpanIn(problem),
    turnSinceKept: () => largestTurnBetween(kept, state.q),
  };
}

function closedSpanIn({ mesh, loading, state, options }: Problem): number | undefined {
  return loading.line && closedSpanOf(state.spanLengthM, mesh.fromTipM[0], options);
}

/** d(turns)/d(load factor) at the present equilibrium, by the factor that led to it where there is one. */
function loadTangent(
  { mesh, loading, state }: Problem,
  factor: number,
  direction: Float64Array,
  again: boolean,
): number {
  assembleInSpace(mesh, loading, factor, state, again);
  if (!again) factorBlocks(state.hessian);
  for (let i = 0; i < direction.length; i++) direction[i] = -state.loadGradient[i];
  solveBlocks(state.hessian, direction, direction);
  return largestPart(direction);
}

/** A step shorter than this is followed by one with the same factor. */
const againRad = 2e-3;

/** Newton at a fixed load, confined to `reachRad` around where it starts; refuses unstable states. */
function correct(
  problem: Problem,
  factor: number,
  reachRad: number,
): { converged: boolean; iterations: number } {
  const { mesh, loading, state, options } = problem;
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
      const converged = stable && closedSpanIn(problem) === undefined;
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
