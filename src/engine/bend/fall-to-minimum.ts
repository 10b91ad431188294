/** Where a rod comes to rest that has lost its equilibrium: see follow.ts. */
import { factorChained, solveChained } from '../numerics/chained-tridiagonal.ts';
import { assemble, energyAt, type Loading, placeNodes, type Workspace } from './equilibrium.ts';
import type { Mesh } from './mesh.ts';

export interface FallOptions {
  /** Newton has converged when no node turns by more than this. */
  toleranceRad: number;
  /** Largest turn of any node in one step. */
  snapRad: number;
  fallIterations: number;
}

/**
 * Damped Newton descent to a minimum of energy from a state that is not near one. The start is nudged
 * towards the tip's own weight side (turning clockwise), which decides where a perfectly balanced rod falls.
 */
export function fallToMinimum(
  mesh: Mesh,
  loading: Loading,
  factor: number,
  work: Workspace,
  options: FallOptions,
): { converged: boolean; iterations: number } {
  const { theta, bendGradient, loadGradient, hessian } = work;
  const before = new Float64Array(theta.length);
  const step = new Float64Array(mesh.count);
  for (let j = 1; j <= mesh.count; j++) theta[j] -= (1e-3 * j) / mesh.count;
  placeNodes(mesh, loading.line, work);
  let energy = energyAt(mesh, loading, factor, work);
  let damping = 0;
  const softest = mesh.springNm.reduce(
    (least, k, e) => (e > 0 && k < least ? k : least),
    Number.POSITIVE_INFINITY,
  );
  for (let iteration = 1; iteration <= options.fallIterations; iteration++) {
    assemble(mesh, loading, factor, work);
    for (let i = 0; i < mesh.count; i++) hessian.diagonal[i] += damping;
    if (!factorChained(hessian)) {
      damping = Math.max(4 * damping, 1e-4 * softest);
      continue;
    }
    for (let i = 0; i < mesh.count; i++) step[i] = -(bendGradient[i] + factor * loadGradient[i]);
    solveChained(hessian, step, step);
    const largest = step.reduce((most, s) => Math.max(most, Math.abs(s)), 0);
    if (largest <= options.toleranceRad && damping === 0) return { converged: true, iterations: iteration };
    before.set(theta);
    const scale = Math.min(1, options.snapRad / largest);
    for (let i = 0; i < mesh.count; i++) theta[i + 1] = before[i + 1] + scale * step[i];
    placeNodes(mesh, loading.line, work);
    const lower = energyAt(mesh, loading, factor, work);
    if (lower <= energy + 1e-12 * Math.abs(energy)) {
      energy = lower;
      damping = damping > 1e-6 * softest ? 0.3 * damping : 0;
    } else {
      theta.set(before);
      placeNodes(mesh, loading.line, work);
      damping = Math.max(4 * damping, 1e-4 * softest);
    }
  }
  return { converged: false, iterations: options.fallIterations };
}
