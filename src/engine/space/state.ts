/**
 * The bent rod in space: a turn per node, and the places that follow from it. Places follow the mean direction of
 * an element's two ends, so the length holds exactly and a plane bend is today's plane bend, element by element.
 */
import type { Mesh } from '../bend/mesh.ts';
import { type ChainedBlocks, chainedBlocks } from '../numerics/chained-blocks.ts';
import { floatPool } from '../numerics/float-pool.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { frameOf, turnBy } from './turn.ts';

export interface SpaceLine {
  /** Per ring, tip-top first: the ring's centre in the node's frame, along d1 and d2. */
  readonly ringOffsetM: Float64Array;
  readonly ringHeightM: Float64Array;
  readonly ringAroundRad: Float64Array;
  readonly reelM: readonly [number, number, number];
  readonly pullN: number;
  /** Per span, span k between ring k and ring k + 1, the last one to the reel. */
  readonly spanTensionN: Float64Array;
  /** Unit vector towards the far point. */
  readonly pull: readonly [number, number, number];
}

export interface SpaceLoading {
  readonly line: SpaceLine | undefined;
  readonly tipN: readonly [number, number, number];
  /** The clamp's turn. */
  readonly clamp: readonly [number, number, number, number];
}

/** Everything the solver writes; made once per mesh shape and reused. */
export interface SpaceState {
  readonly q: Float64Array;
  readonly frame: Float64Array;
  readonly place: Float64Array;
  /** Per element: its length over the length of its two end directions' sum. */
  readonly meanScaleM: Float64Array;
  readonly ring: Float64Array;
  /** Unit vector of each span, towards the tip. */
  readonly span: Float64Array;
  readonly spanLengthM: Float64Array;
  /** Two unit vectors square to each span. */
  readonly across: Float64Array;
  readonly ringForce: Float64Array;
  readonly ringAtNode: Int32Array;
  readonly bendGradient: Float64Array;
  readonly loadGradient: Float64Array;
  /** Derivative of the bending energy by a turn of the clamp, in its frame. */
  readonly clampGradient: Float64Array;
  readonly hessian: ChainedBlocks;
}

export function makeSpaceState(mesh: SpaceMesh): SpaceState {
  const nodes = mesh.count + 1;
  const rings = mesh.ringNode.length;
  const f = floatPool(23 * nodes + 16 * (rings + 1) + 3);
  const ringAtNode = new Int32Array(nodes).fill(-1);
  mesh.ringNode.forEach((node, k) => {
    ringAtNode[node] = k;
  });
  return {
    q: f(4 * nodes),
    frame: f(9 * nodes),
    place: f(3 * nodes),
    meanScaleM: f(nodes),
    ring: f(3 * rings),
    span: f(3 * rings),
    spanLengthM: f(rings),
    across: f(6 * rings),
    ringForce: f(3 * rings),
    ringAtNode,
    bendGradient: f(3 * mesh.count),
    loadGradient: f(3 * mesh.count),
    clampGradient: f(3),
    hessian: chainedBlocks(mesh.count, Math.max(1, rings)),
  };
}

/** The unloaded rod: each element turned by its own bow. */
export function restState(mesh: SpaceMesh, loading: SpaceLoading, { q }: SpaceState): void {
  q.set(loading.clamp);
  for (let e = 1; e <= mesh.count; e++) {
    q.copyWithin(4 * e, 4 * e - 4, 4 * e);
    turnBy(q, 4 * e, -mesh.restSideTurn[e], mesh.restTurn[e], 0);
  }
}

/** Frames, places, rings and spans for the turns in `state.q`. */
export function placeState(mesh: SpaceMesh, line: SpaceLine | undefined, state: SpaceState): void {
  const { q, frame, place, meanScaleM } = state;
  place.fill(0, 0, 3);
  frameOf(q, 0, frame);
  for (let e = 1; e <= mesh.count; e++) {
    frameOf(q, e, frame);
    const b = 9 * e + 6;
    const x = frame[b - 9] + frame[b];
    const y = frame[b - 8] + frame[b + 1];
    const z = frame[b - 7] + frame[b + 2];
    const scale = mesh.lengthM[e] / Math.sqrt(x * x + y * y + z * z);
    meanScaleM[e] = scale;
    const at = 3 * e;
    place[at] = place[at - 3] + scale * x;
    place[at + 1] = place[at - 2] + scale * y;
    place[at + 2] = place[at - 1] + scale * z;
  }
  if (line) placeRings(mesh, line, state);
}

function placeRings(mesh: SpaceMesh, line: SpaceLine, state: SpaceState): void {
  const { frame, place, ring, span, spanLengthM } = state;
  const rings = mesh.ringNode.length;
  for (let k = 0; k < rings; k++) {
    const node = mesh.ringNode[k];
    const a = line.ringOffsetM[2 * k];
    const b = line.ringOffsetM[2 * k + 1];
    for (let i = 0; i < 3; i++) {
      ring[3 * k + i] = place[3 * node + i] + a * frame[9 * node + i] + b * frame[9 * node + 3 + i];
    }
  }
  for (let k = 0; k < rings; k++) {
    const next = (i: number) => (k + 1 < rings ? ring[3 * k + 3 + i] : line.reelM[i]);
    const x = ring[3 * k] - next(0);
    const y = ring[3 * k + 1] - next(1);
    const z = ring[3 * k + 2] - next(2);
    const length = Math.max(Math.sqrt(x * x + y * y + z * z), 1e-12);
    spanLengthM[k] = length;
    span[3 * k] = x / length;
    span[3 * k + 1] = y / length;
    span[3 * k + 2] = z / length;
    squareTo(span, 3 * k, state.across, 6 * k);
  }
}

/** Two unit vectors square to a unit vector and to each other. */
function squareTo(u: Float64Array, at: number, to: Float64Array, out: number): void {
  const x = u[at];
  const y = u[at + 1];
  const z = u[at + 2];
  // the one square to z, too, unless the vector runs along z
  const flat = x * x + y * y;
  const along = flat < 0.01;
  const over = 1 / Math.sqrt(along ? y * y + z * z : flat);
  const [p, q, r] = along ? [0, -z * over, y * over] : [-y * over, x * over, 0];
  to[out] = p;
  to[out + 1] = q;
  to[out + 2] = r;
  to[out + 3] = y * r - z * q;
  to[out + 4] = z * p - x * r;
  to[out + 5] = x * q - y * p;
}

/** Angles of the axis seen from the side, from the clamp, without jumps. */
export function anglesFromTheSide({ frame }: SpaceState, buttAngleRad: number): Float64Array {
  const angles = new Float64Array(frame.length / 9);
  let angle = buttAngleRad;
  for (let j = 0; j < angles.length; j++) {
    const seen = Math.atan2(frame[9 * j + 7], frame[9 * j + 6]);
    angle = seen - 2 * Math.PI * Math.round((seen - angle) / (2 * Math.PI));
    angles[j] = angle;
  }
  return angles;
}

/** Turns read off the old nodes at the places of the new ones (both run from the clamp to the tip). */
export function carryTurns(from: Mesh, q: Float64Array, to: Mesh, next: Float64Array): void {
  let e = 1;
  for (let j = 0; j <= to.count; j++) {
    const place = to.fromTipM[j];
    while (e < from.count && from.fromTipM[e] > place) e++;
    const share = (from.fromTipM[e - 1] - place) / from.lengthM[e];
    const a = 4 * e - 4;
    let square = 0;
    for (let i = 0; i < 4; i++) {
      next[4 * j + i] = q[a + i] + share * (q[a + 4 + i] - q[a + i]);
      square += next[4 * j + i] ** 2;
    }
    for (let i = 0; i < 4; i++) next[4 * j + i] /= Math.sqrt(square);
  }
}
