/**
 * The way up: Euler predictor along the load, Newton corrector, step length from the turn of the fastest-turning node,
 * for any rod that knows how to take a step (follow.ts in the plane, space/follow-in-space.ts). Only stable minima of
 * energy are accepted. Where the branch ends the rod falls to the next one. Every loop is bounded.
 */
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

/** A rod on its way up. */
export interface Climber {
  /** d(bend)/d(share of the load) at the bend at hand, which the last step led to or not; its largest turn. */
  tangent(factor: number, climbed: boolean): number;
  /** Remembers the bend at hand. */
  keep(): void;
  backToKept(): void;
  /** From the kept bend along the tangent. */
  stepFromKept(share: number): void;
  /** Newton at a fixed load, confined to `reachRad` around where it starts; refuses unstable bends. */
  correct(factor: number, reachRad: number): { converged: boolean; iterations: number };
  fall(factor: number): { converged: boolean; iterations: number };
  /** Span whose ends the line has pulled together. */
  closedSpan(): number | undefined;
  /** Largest turn of any node since `keep`. */
  turnSinceKept(): number;
}

/** From the unloaded rod, placed, to the whole load. */
export function followPath(rod: Climber, options: FollowOptions): FollowResult {
  const path: FollowResult = { factor: 0, followedTo: 1, iterations: 0, status: 'converged' };
  let largestStep = 1;
  let climbed = false;
  while (path.factor < 1 && path.iterations < options.maxIterations) {
    rod.keep();
    const speed = rod.tangent(path.factor, climbed);
    const wanted = Math.min(1 - path.factor, largestStep, options.stepRad / Math.max(speed, 1e-300));
    const step = climb(rod, path, wanted, options);
    climbed = step > 0;
    largestStep = climbed ? 4 * step : 1;
    if (climbed) continue;
    rod.backToKept();
    if (path.iterations < options.maxIterations) fall(rod, path, options);
    if (path.closedSpan !== undefined) break;
  }
  if (path.factor < 1) path.status = 'not-converged';
  return path;
}

/** One load step, shortened until Newton converges; 0 where the branch has ended. */
function climb(rod: Climber, path: FollowResult, wanted: number, options: FollowOptions): number {
  const smallest = options.smallestStep * Math.max(path.factor, wanted);
  for (let step = wanted; step >= smallest; step *= 0.35) {
    if (path.iterations >= options.maxIterations) return 0;
    rod.stepFromKept(step);
    const target = 1 - path.factor - step < 1e-12 ? 1 : path.factor + step;
    const newton = rod.correct(target, 0.6 * options.stepRad);
    path.iterations += newton.iterations;
    if (newton.converged) {
      path.factor = target;
      return step;
    }
  }
  return 0;
}

/** The branch has ended: a little more load, and the rod falls to the next minimum of energy. */
function fall(rod: Climber, path: FollowResult, options: FollowOptions): void {
  const endedAt = path.factor;
  path.factor = Math.min(1, path.factor + options.stepPastEnd * Math.max(path.factor, options.smallestStep));
  const fallen = rod.fall(path.factor);
  path.iterations += fallen.iterations;
  path.closedSpan = rod.closedSpan();
  const lost = !fallen.converged && path.iterations >= options.maxIterations;
  if (path.closedSpan !== undefined || lost) {
    path.factor = endedAt;
    rod.backToKept();
    return;
  }
  if (path.followedTo === 1 && rod.turnSinceKept() > options.snapRad) {
    path.followedTo = endedAt;
    path.status = 'branch-lost';
  }
}

/** The first span shorter than the shortest that is open. */
export function closedSpanOf(
  spanLengthM: Float64Array,
  lengthM: number,
  options: FollowOptions,
): number | undefined {
  const shortest = options.closedSpan * lengthM;
  for (let k = 0; k < spanLengthM.length; k++) if (spanLengthM[k] < shortest) return k;
  return undefined;
}
