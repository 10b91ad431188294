/**
 * Friction of the line in the rings: T changes by exp(± µ·turn) at every ring (Euler 1769, Eytelwein 1808), turn
 * the line angle there. Line coming in (wound or pulled towards the reel): T grows towards the reel. Line going
 * out: it falls. The pull beyond the tip-top is the load's tension in both.
 *
 * With tensions held, the bend is still a minimum of energy; the tensions follow from its line angles. The two are
 * settled in turns, and where that does not close, the coefficient is raised in smaller parts. Friction has no
 * energy of its own: a bend found this way is an equilibrium that the frictionless one leads to.
 */
import type { LineThroughRings, Loading, Workspace } from './equilibrium.ts';
import { followFromNearby } from './follow.ts';
import type { Mesh } from './mesh.ts';

export interface LineFriction {
  /** Of the line on a ring; 0 is none. Measured values for coated line on rings were not found: try a range. */
  coefficient: number;
  /** Which way the line runs. */
  direction: 'in' | 'out';
}

export interface FrictionOptions {
  /** Change of any tension, as a share of the pull, that counts as none. */
  tolerance: number;
  maxTurns: number;
  /** The coefficient is raised in parts no smaller than this share of it. */
  smallestPart: number;
}
export const frictionDefaults: FrictionOptions = { tolerance: 1e-9, maxTurns: 60, smallestPart: 1 / 64 };

export interface Settled {
  loading: Loading;
  converged: boolean;
  iterations: number;
}

/** `work` holds the frictionless bend and is left with the bend over friction. */
export function settleFriction(
  mesh: Mesh,
  loading: Loading,
  friction: LineFriction,
  work: Workspace,
  options: FrictionOptions = frictionDefaults,
): Settled {
  const settled: Settled = { loading, converged: true, iterations: 0 };
  const before = Float64Array.from(work.theta);
  let reached = 0;
  let part = 1;
  while (reached < 1) {
    const share = Math.min(1, reached + part);
    const coefficient = share * friction.coefficient;
    const turns = takeTurns(mesh, settled.loading, { ...friction, coefficient }, work, options);
    settled.iterations += turns.iterations;
    if (turns.converged) {
      reached = share;
      settled.loading = turns.loading;
      before.set(work.theta);
      continue;
    }
    work.theta.set(before);
    followFromNearby(mesh, settled.loading, work);
    part /= 4;
    if (part < options.smallestPart) return { ...settled, converged: false };
  }
  return settled;
}

function takeTurns(
  mesh: Mesh,
  loading: Loading,
  friction: LineFriction,
  work: Workspace,
  options: FrictionOptions,
): Settled {
  const { line } = loading;
  if (!line) return { loading, converged: true, iterations: 0 };
  const settled: Settled = { loading, converged: false, iterations: 0 };
  let held = line.spanTensionN;
  for (let turn = 0; turn < options.maxTurns; turn++) {
    const spanTensionN = tensionsOf(line, friction, work);
    settled.loading = { ...loading, line: { ...line, spanTensionN } };
    const bent = followFromNearby(mesh, settled.loading, work);
    settled.iterations += bent.iterations;
    if (!bent.converged) return settled;
    const change = spanTensionN.reduce((most, n, k) => Math.max(most, Math.abs(n - held[k])), 0);
    held = spanTensionN;
    if (change <= options.tolerance * line.pullN) return { ...settled, converged: true };
  }
  return settled;
}

/** Tension of every stretch behind a ring, from the line angles of the bend at hand. */
export function tensionsOf(line: LineThroughRings, friction: LineFriction, work: Workspace): Float64Array {
  const exponent = friction.direction === 'in' ? friction.coefficient : -friction.coefficient;
  let tensionN = line.pullN;
  let ux = Math.cos(line.pullAngleRad);
  let uy = Math.sin(line.pullAngleRad);
  return Float64Array.from(work.spanUx, (vx, k) => {
    const vy = work.spanUy[k];
    tensionN *= Math.exp(exponent * Math.abs(Math.atan2(vx * uy - vy * ux, vx * ux + vy * uy)));
    ux = vx;
    uy = vy;
    return tensionN;
  });
}
