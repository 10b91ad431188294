/** What the solver found in space, as the answer shows it: points tip first, rings, spans, torque, stability. */
import { type BendAnswer, type BendPoint, type ContactReading, reasonOf } from '../bend/bend-answer.ts';
import type { FollowResult } from '../bend/follow.ts';
import { factorBlocks } from '../numerics/factor-blocks.ts';
import { assembleInSpace } from './equilibrium-in-space.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { readRingsInSpace, readSpansInSpace, type SpaceRingReading } from './reading-in-space.ts';
import { anglesFromTheSide, type SpaceLoading, type SpaceState } from './state.ts';
import { elementTurn } from './strain.ts';

/**
 * `angleRad` is that of the axis seen from the side, along the blank without jumps; `curvaturePerM` bends the rod up
 * and `sideCurvaturePerM` to the right in the blank's own axes, as a request's natural bow does.
 */
export interface SpacePoint extends BendPoint {
  zM: number;
  sideCurvaturePerM: number;
  /** From the clamp to here, positive turning a ring from under to the right. */
  twistRad: number;
}
export interface SpaceAnswer extends Omit<BendAnswer, 'points' | 'rings' | 'contact'> {
  points: SpacePoint[];
  rings: SpaceRingReading[];
  /** What the clamp gives the rod about the butt's axis, positive in the sense of a positive roll. */
  gripTorqueNm: number;
  /** False where a small push makes the rod leave the bend shown. */
  stable: boolean;
  /** With contact only. */
  contact?: Pick<ContactReading, 'stretches'>;
}

/** A bend in space as solved. */
export interface SolvedInSpace {
  mesh: SpaceMesh;
  loading: SpaceLoading;
  state: SpaceState;
  followed: FollowResult;
  buttAngleRad: number;
}

export function spaceAnswer({ mesh, loading, state, followed, buttAngleRad }: SolvedInSpace): SpaceAnswer {
  const { line } = loading;
  const { factor, status } = followed;
  assembleInSpace(mesh, loading, factor, state);
  const residual = state.bendGradient.reduce(
    (most, bending, i) => Math.max(most, Math.abs(bending + factor * state.loadGradient[i])),
    0,
  );
  return {
    status,
    ...(status === 'converged' ? {} : { reason: reasonOf(followed, mesh.ringNode.length) }),
    points: spacePoints(mesh, loading, factor, state, buttAngleRad),
    rings: line ? readRingsInSpace(line, state) : [],
    spans: line ? readSpansInSpace(mesh, line, state) : [],
    gripTorqueNm: 0 - state.clampGradient[2],
    stable: factorBlocks(state.hessian) === 0,
    iterations: followed.iterations,
    residual,
  };
}

function spacePoints(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  factor: number,
  state: SpaceState,
  buttAngleRad: number,
): SpacePoint[] {
  const n = mesh.count;
  const { place } = state;
  const turns = elementCurvatures(mesh, state);
  const tip = tipCurvature(mesh, loading, factor, state);
  const points: SpacePoint[] = new Array(n + 1);
  const angles = anglesFromTheSide(state, buttAngleRad);
  let twistRad = 0;
  for (let j = 0; j <= n; j++) {
    if (j > 0) twistRad += turns.twist[j];
    points[n - j] = {
      fromTipM: mesh.fromTipM[j],
      xM: place[3 * j],
      yM: place[3 * j + 1],
      zM: place[3 * j + 2],
      angleRad: angles[j],
      curvaturePerM: j === n ? tip.up : atNode(mesh, turns.up, j),
      sideCurvaturePerM: j === n ? tip.side : atNode(mesh, turns.side, j),
      twistRad,
    };
  }
  return points;
}

/** Per element: curvature up and to the right per metre, twist in all. */
function elementCurvatures(mesh: SpaceMesh, { q }: SpaceState) {
  const [up, side, twist] = [0, 1, 2].map(() => new Float64Array(mesh.count + 1));
  const turn = new Float64Array(13);
  for (let e = 1; e <= mesh.count; e++) {
    elementTurn(mesh, q, e, turn);
    up[e] = turn[1] / mesh.lengthM[e];
    side[e] = -turn[0] / mesh.lengthM[e];
    twist[e] = -turn[2];
  }
  return { up, side, twist };
}

/** Between the two elements of a node; at the clamp the line through the first two middles. */
function atNode({ lengthM }: SpaceMesh, perElement: Float64Array, j: number): number {
  if (j === 0) {
    const slope = (perElement[2] - perElement[1]) / (0.5 * (lengthM[1] + lengthM[2]));
    return perElement[1] - slope * 0.5 * lengthM[1];
  }
  const [a, b] = [lengthM[j], lengthM[j + 1]];
  return (b * perElement[j] + a * perElement[j + 1]) / (a + b);
}

/** At the tip the moment is the tip-top ring's alone. */
function tipCurvature(mesh: SpaceMesh, { line }: SpaceLoading, factor: number, state: SpaceState) {
  const n = mesh.count;
  const rest = { up: mesh.restTurn[n] / mesh.lengthM[n], side: mesh.restSideTurn[n] / mesh.lengthM[n] };
  const ring = line ? state.ringAtNode[n] : -1;
  if (!line || ring < 0) return rest;
  const along = [0, 1, 2].reduce(
    (sum, i) => sum + state.ringForce[3 * ring + i] * state.frame[9 * n + 6 + i],
    0,
  );
  const perOffset = (factor * along) / mesh.stiffnessNm2[n];
  return {
    up: rest.up - perOffset * line.ringOffsetM[2 * ring],
    side: rest.side - perOffset * line.ringOffsetM[2 * ring + 1],
  };
}
