/** The plane rod falls: see follow-path.ts and fall-to-minimum.ts. */
import { factorChained, solveChained } from '../numerics/chained-tridiagonal.ts';
import { assemble, energyAt, type Loading, placeNodes, type Workspace } from './equilibrium.ts';
import { type Falling, type FallOptions, fallToMinimum } from './fall-to-minimum.ts';
import type { Mesh } from './mesh.ts';

/** Pushed towards the tip's own weight side (turning clockwise), which decides where a balanced rod falls. */
export function fallInPlane(
  mesh: Mesh,
  loading: Loading,
  factor: number,
  work: Workspace,
  options: FallOptions,
): { converged: boolean; iterations: number } {
  const { theta } = work;
  for (let j = 1; j <= mesh.count; j++) theta[j] -= (1e-3 * j) / mesh.count;
  placeNodes(mesh, loading.line, work);
  return fallToMinimum(fallingOf(mesh, loading, factor, work), options);
}

function fallingOf(mesh: Mesh, loading: Loading, factor: number, work: Workspace): Falling {
  const { theta, bendGradient, loadGradient, hessian } = work;
  const before = new Float64Array(theta.length);
  const step = new Float64Array(mesh.count);
  return {
    softestNm: mesh.springNm.reduce(
      (least, k, e) => (e > 0 && k < least ? k : least),
      Number.POSITIVE_INFINITY,
    ),
    energy: () => energyAt(mesh, loading, factor, work),
    newton: (damping) => {
      assemble(mesh, loading, factor, work);
      for (let i = 0; i < mesh.count; i++) hessian.diagonal[i] += damping;
      if (!factorChained(hessian)) return undefined;
      for (let i = 0; i < mesh.count; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
      solveChained(hessian, step, step);
      return step.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
    },
    move: (share) => {
      before.set(theta);
      for (let i = 0; i < mesh.count; i++) theta[i + 1] = before[i + 1] + share * step[i];
      placeNodes(mesh, loading.line, work);
    },
    moveBack: () => {
      theta.set(before);
      placeNodes(mesh, loading.line, work);
    },
  };
}
