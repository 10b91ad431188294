/** Where a rod comes to rest in space that has lost its equilibrium: as bend/fall-to-minimum.ts. */
import type { FallOptions } from '../bend/fall-to-minimum.ts';
import { factorBlocks } from '../numerics/factor-blocks.ts';
import { solveBlocks } from '../numerics/solve-blocks.ts';
import { assembleInSpace, energyInSpace } from './equilibrium-in-space.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { placeState, type SpaceLoading, type SpaceState } from './state.ts';
import { largestPart, moveFrom, turnBy } from './turn.ts';

/** Damped Newton descent to a minimum of energy from a state that is not near one, after a small push. */
export function fallInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  factor: number,
  state: SpaceState,
  options: FallOptions,
): { converged: boolean; iterations: number } {
  const { q, bendGradient, loadGradient, hessian } = state;
  const before = q.slice();
  const step = new Float64Array(3 * mesh.count);
  push(mesh, state);
  placeState(mesh, loading.line, state);
  let energy = energyInSpace(mesh, loading, factor, state);
  let damping = 0;
  const softest = softestSpring(mesh);
  for (let iteration = 1; iteration <= options.fallIterations; iteration++) {
    assembleInSpace(mesh, loading, factor, state);
    for (let i = 0; i < hessian.diagonal.length; i++) if (i % 6 < 3) hessian.diagonal[i] += damping;
    if (factorBlocks(hessian) > 0) {
      damping = Math.max(4 * damping, 1e-4 * softest);
      continue;
    }
    for (let i = 0; i < step.length; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
    solveBlocks(hessian, step, step);
    const largest = largestPart(step);
    if (largest <= options.toleranceRad && damping === 0) return { converged: true, iterations: iteration };
    before.set(q);
    moveFrom(before, step, Math.min(1, options.snapRad / largest), q);
    placeState(mesh, loading.line, state);
    const lower = energyInSpace(mesh, loading, factor, state);
    if (lower <= energy + 1e-12 * Math.abs(energy)) {
      energy = lower;
      damping = damping > 1e-6 * softest ? 0.3 * damping : 0;
    } else {
      q.set(before);
      placeState(mesh, loading.line, state);
      damping = Math.max(4 * damping, 1e-4 * softest);
    }
  }
  return { converged: false, iterations: options.fallIterations };
}

/** A small push towards the tip's own weight and, less, to the right: decides where a balanced rod falls. */
function push(mesh: SpaceMesh, { q, frame }: SpaceState): void {
  for (let j = 1; j <= mesh.count; j++) {
    const amount = (1e-3 * j) / mesh.count;
    const f = 9 * j;
    const part = (row: number) => -amount * (frame[f + 3 * row + 2] + 0.3 * frame[f + 3 * row + 1]);
    turnBy(q, 4 * j, part(0), part(1), part(2));
  }
}

function softestSpring({ springNm, twistSpringNm, count }: SpaceMesh): number {
  let least = Number.POSITIVE_INFINITY;
  for (let e = 1; e <= count; e++) least = Math.min(least, springNm[e], twistSpringNm[e]);
  return least;
}
