/**
 * A rod clamped at both ends, which no bench has: for instabilities under twist. The state is handed in; the far end
 * may slide only where it is let, and the second derivatives that are left say whether the state is stable
 * (inertia of the bordered matrix, Haynsworth 1968).
 */
import { assembleInSpace } from '../../src/engine/space/equilibrium-in-space.ts';
import { buildSpaceMesh, type SpaceMesh } from '../../src/engine/space/mesh-in-space.ts';
import { clampTurn, spaceTables } from '../../src/engine/space/space-request.ts';
import {
  makeSpaceState,
  placeState,
  type SpaceLoading,
  type SpaceState,
} from '../../src/engine/space/state.ts';
import { product, turnAbout, turnBy } from '../../src/engine/space/turn.ts';
import { writtenHessian } from './written-hessian.ts';

export interface TwistedRod {
  elements: number;
  /** With EI and the length 1. */
  GJ: number;
  /** Turn of the axis from end to end: 0 a straight shaft, 2π a ring. */
  bendRad: number;
  twistRad: number;
  /** Coordinates that are held: how far along the rod, and which of x, y, z. */
  held: readonly (readonly [along: number, axis: number])[];
}

export function isStableBetweenClamps(rod: TwistedRod): boolean {
  const unit = {
    lengthM: 1,
    stiffness: [{ fromTipM: 0, EINm2: 1 }],
    torsion: [{ fromTipM: 0, GJNm2: rod.GJ }],
  };
  const mesh = buildSpaceMesh(spaceTables(unit), [], [], { resolution: rod.elements });
  // the ring's ends push on each other across its plane: N = M3 κ b
  const across = rod.GJ * rod.twistRad * rod.bendRad;
  const loading: SpaceLoading = { line: undefined, tipN: [0, 0, across], clamp: clampTurn(0, 0) };
  const state = makeSpaceState(mesh);
  for (let j = 0; j <= mesh.count; j++) {
    const share = 1 - mesh.fromTipM[j];
    const turned = product(clampTurn(share * rod.bendRad, 0), turnAbout(0, 0, 1, share * rod.twistRad));
    state.q.set(turned, 4 * j);
  }
  const borders = rod.held.map((held) => movesOf(mesh, loading, state, held));
  placeState(mesh, loading.line, state);
  assembleInSpace(mesh, loading, 1, state);
  const free = 3 * mesh.count - 3;
  const matrix = writtenHessian(state.hessian).slice(0, free);
  const bordered = [
    ...matrix.map((row, i) => [...row.slice(0, free), ...borders.map((border) => border[i])]),
    ...borders.map((border) => [...border.slice(0, free), ...rod.held.map(() => 0)]),
  ];
  return negativePivots(bordered) === rod.held.length;
}

function movesOf(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  state: SpaceState,
  [along, axis]: readonly [number, number],
): number[] {
  const there = state.q.slice();
  const step = 1e-6;
  const at = (i: number, turn: number) => {
    state.q.set(there);
    const parts = [0, 0, 0];
    parts[i % 3] = turn;
    turnBy(state.q, 4 * Math.floor(i / 3) + 4, parts[0], parts[1], parts[2]);
    placeState(mesh, loading.line, state);
    return state.place[3 * Math.round(along * mesh.count) + axis];
  };
  const moves = Array.from({ length: 3 * mesh.count }, (_, i) => (at(i, step) - at(i, -step)) / (2 * step));
  state.q.set(there);
  return moves;
}

function negativePivots(matrix: number[][]): number {
  let negative = 0;
  for (let k = 0; k < matrix.length; k++) {
    const pivot = matrix[k][k];
    if (pivot < 0) negative++;
    for (let i = k + 1; i < matrix.length; i++) {
      const factor = matrix[i][k] / pivot;
      if (factor === 0) continue;
      for (let j = k; j < matrix.length; j++) matrix[i][j] -= factor * matrix[k][j];
    }
  }
  return negative;
}

/** Where `stable` of an amount turns from true to false, between two amounts. */
export function turnsUnstableAt(stable: (amount: number) => boolean, low: number, high: number): number {
  if (!stable(low) || stable(high)) throw new Error(`no change of stability between ${low} and ${high}`);
  let [from, to] = [low, high];
  while (to - from > 1e-7 * high) {
    const middle = 0.5 * (from + to);
    if (stable(middle)) from = middle;
    else to = middle;
  }
  return 0.5 * (from + to);
}
