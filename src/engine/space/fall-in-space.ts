/** Where a rod comes to rest in space that has lost its equilibrium: see bend/fall-to-minimum.ts. */
import { type Falling, type FallOptions, fallToMinimum } from '../bend/fall-to-minimum.ts';
import { factorBlocks } from '../numerics/factor-blocks.ts';
import { solveBlocks } from '../numerics/solve-blocks.ts';
import { assembleInSpace, energyInSpace } from './equilibrium-in-space.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { placeState, type SpaceLoading, type SpaceState } from './state.ts';
import { largestPart, moveFrom, turnBy } from './turn.ts';

/** After a small push. */
export function fallInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  factor: number,
  state: SpaceState,
  options: FallOptions,
): { converged: boolean; iterations: number } {
  push(mesh, state);
  placeState(mesh, loading.line, state);
  return fallToMinimum(fallingOf(mesh, loading, factor, state), options);
}

function fallingOf(mesh: SpaceMesh, loading: SpaceLoading, factor: number, state: SpaceState): Falling {
  const { q, bendGradient, loadGradient, hessian } = state;
  const before = q.slice();
  const step = new Float64Array(3 * mesh.count);
  return {
    softestNm: softestSpring(mesh),
    energy: () => energyInSpace(mesh, loading, factor, state),
    newton: (damping) => {
      assembleInSpace(mesh, loading, factor, state);
      for (let i = 0; i < hessian.diagonal.length; i++) if (i % 6 < 3) hessian.diagonal[i] += damping;
      if (factorBlocks(hessian) > 0) return undefined;
      for (let i = 0; i < step.length; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
      solveBlocks(hessian, step, step);
      return largestPart(step);
    },
    move: (share) => {
      before.set(q);
      moveFrom(before, step, share, q);
      placeState(mesh, loading.line, state);
    },
    moveBack: () => {
      q.set(before);
      placeState(mesh, loading.line, state);
    },
  };
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
