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
  /** Of each ring, tip first, as a share of the coefficient: a roller that turns rubs less. Left out: 1. */
  ringShares?: readonly number[];
}

interface FrictionOptions {
  /** Change of any tension, as a share of the pull, that counts as none. */
  tolerance: number;
  maxTurns: number;
  /** The coefficient is raised in parts no smaller than this share of it. */
  smallestPart: number;
}
const frictionDefaults: FrictionOptions = { tolerance: 1e-9, maxTurns: 60, smallestPart: 1 / 64 };

/** Where the blank too carries the line: `ringOfSupport` says which ring each support is, -1 for the blank. */
export function onSupports(friction: LineFriction, ringOfSupport: Int32Array): LineFriction {
  const { ringShares } = friction;
  if (!ringShares) return friction;
  return { ...friction, ringShares: Array.from(ringOfSupport, (ring) => ringShares[ring] ?? 1) };
}

/** A rod whose line's tensions can be held. */
export interface RubbingRod {
  readonly pullN: number;
  /** Tension of every stretch behind a ring, from the line angles of the bend at hand; `exponent` is ±µ. */
  tensions(exponent: number): Float64Array;
  /** Bends under these tensions, from the bend at hand. */
  bendUnder(spanTensionN: Float64Array): { converged: boolean; iterations: number };
  /** Remembers the bend at hand. */
  keep(): void;
  backToKept(): void;
}

interface SettledTensions {
  spanTensionN: Float64Array;
  converged: boolean;
  iterations: number;
}

/** From the bend under `free` tensions to the one over friction, which the rod is left in. */
export function settleTensions(
  rod: RubbingRod,
  free: Float64Array,
  { coefficient, direction }: LineFriction,
  options: FrictionOptions = frictionDefaults,
): SettledTensions {
  const settled: SettledTensions = { spanTensionN: free, converged: true, iterations: 0 };
  rod.keep();
  let reached = 0;
  let part = 1;
  while (reached < 1) {
    const share = Math.min(1, reached + part);
    const exponent = share * (direction === 'in' ? coefficient : -coefficient);
    const turns = takeTurns(rod, settled.spanTensionN, exponent, options);
    settled.iterations += turns.iterations;
    if (turns.converged) {
      reached = share;
      settled.spanTensionN = turns.spanTensionN;
      rod.keep();
      continue;
    }
    rod.backToKept();
    rod.bendUnder(settled.spanTensionN);
    part /= 4;
    if (part < options.smallestPart) return { ...settled, converged: false };
  }
  return settled;
}

function takeTurns(
  rod: RubbingRod,
  from: Float64Array,
  exponent: number,
  options: FrictionOptions,
): SettledTensions {
  const settled: SettledTensions = { spanTensionN: from, converged: false, iterations: 0 };
  for (let turn = 0; turn < options.maxTurns; turn++) {
    const spanTensionN = rod.tensions(exponent);
    const bent = rod.bendUnder(spanTensionN);
    settled.iterations += bent.iterations;
    const held = settled.spanTensionN;
    settled.spanTensionN = spanTensionN;
    if (!bent.converged) return settled;
    const change = spanTensionN.reduce((most, n, k) => Math.max(most, Math.abs(n - held[k])), 0);
    if (change <= options.tolerance * rod.pullN) return { ...settled, converged: true };
  }
  return settled;
}

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
): Settled {
  const { line } = loading;
  if (!line) return { loading, converged: true, iterations: 0 };
  const kept = new Float64Array(work.theta.length);
  const held = (spanTensionN: Float64Array) => ({ ...loading, line: { ...line, spanTensionN } });
  const rod: RubbingRod = {
    pullN: line.pullN,
    tensions: (exponent) => tensionsOf(line, exponent, work, friction.ringShares),
    bendUnder: (spanTensionN) => followFromNearby(mesh, held(spanTensionN), work),
    keep: () => kept.set(work.theta),
    backToKept: () => work.theta.set(kept),
  };
  const { spanTensionN, ...settled } = settleTensions(rod, line.spanTensionN, friction);
  return { ...settled, loading: held(spanTensionN) };
}

function tensionsOf(
  line: LineThroughRings,
  exponent: number,
  work: Workspace,
  ringShares: readonly number[] = [],
): Float64Array {
  let tensionN = line.pullN;
  let ux = Math.cos(line.pullAngleRad);
  let uy = Math.sin(line.pullAngleRad);
  return Float64Array.from(work.spanUx, (vx, k) => {
    const vy = work.spanUy[k];
    const ringExponent = exponent * (ringShares[k] ?? 1);
    tensionN *= Math.exp(ringExponent * Math.abs(Math.atan2(vx * uy - vy * ux, vx * ux + vy * uy)));
    ux = vx;
    uy = vy;
    return tensionN;
  });
}
