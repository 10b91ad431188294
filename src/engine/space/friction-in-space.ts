/** Friction of the line in rings anywhere round the rod: bend/friction.ts, with the line angles in space. */
import { type LineFriction, type RubbingRod, settleTensions } from '../bend/friction.ts';
import { followNearbyInSpace } from './follow-in-space.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { readRingsInSpace } from './reading-in-space.ts';
import type { SpaceLine, SpaceLoading, SpaceState } from './state.ts';

export interface SettledInSpace {
  loading: SpaceLoading;
  converged: boolean;
  iterations: number;
}

/** `state` holds the frictionless bend and is left with the bend over friction. */
export function settleFrictionInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  friction: LineFriction,
  state: SpaceState,
): SettledInSpace {
  const line = loading.line as SpaceLine;
  const kept = new Float64Array(state.q.length);
  const held = (spanTensionN: Float64Array) => ({ ...loading, line: { ...line, spanTensionN } });
  const rod: RubbingRod = {
    pullN: line.pullN,
    tensions: (exponent) => tensionsOf(line, exponent, state, friction.ringShares),
    bendUnder: (spanTensionN) => followNearbyInSpace(mesh, held(spanTensionN), state),
    keep: () => kept.set(state.q),
    backToKept: () => state.q.set(kept),
  };
  const { spanTensionN, ...settled } = settleTensions(rod, line.spanTensionN, friction);
  return { ...settled, loading: held(spanTensionN) };
}

function tensionsOf(
  line: SpaceLine,
  exponent: number,
  state: SpaceState,
  ringShares: readonly number[] = [],
): Float64Array {
  let tensionN = line.pullN;
  return Float64Array.from(readRingsInSpace(line, state), ({ lineAngleRad }, k) => {
    tensionN *= Math.exp(exponent * (ringShares[k] ?? 1) * lineAngleRad);
    return tensionN;
  });
}
