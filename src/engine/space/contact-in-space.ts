/**
 * A line that may lie on the round blank, rings anywhere round it: the energy stays T·(length of the line). In turns the
 * line takes the shortest way past the blank as it is bent, and the rod bends with that line's places held like rings on
 * its surface; without friction each turn lowers the energy. With
 * friction the tensions change by every turn of the line, on the blank as in the rings; its place there is that of a line
 * which slides freely sideways. The line's own thickness is left out.
 */
import { type LineFriction, onSupports } from '../bend/friction.ts';
import { followNearbyInSpace } from './follow-in-space.ts';
import { settleFrictionInSpace } from './friction-in-space.ts';
import { type Circle, type TouchedCircle, tautWay } from './line-on-tube.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { around } from './space-request.ts';
import { makeSpaceState, type SpaceLine, type SpaceLoading, type SpaceState } from './state.ts';

export interface SpaceContactOptions {
  maxRounds: number;
  /** Settled when no node moves by more than this from one turn to the next. */
  settledM: number;
}
export const spaceContactDefaults: SpaceContactOptions = { maxRounds: 60, settledM: 1e-7 };

/** Outside radius of the blank at every node, and where the reel stands round it. */
export interface RoundBlank {
  radiusM: Float64Array;
  reelAroundRad: number;
}

/** The line held by rings and by the blank. */
export interface LineOnBlank {
  mesh: SpaceMesh;
  loading: SpaceLoading;
  state: SpaceState;
  /** Per support, tip first: the ring it is, or -1 where it is the blank. */
  ringOfSupport: Int32Array;
  converged: boolean;
  iterations: number;
}

/** `state` holds the bend without contact; it is left unchanged. */
export function settleContactInSpace(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  blank: RoundBlank,
  free: SpaceState,
  friction?: LineFriction,
  options: SpaceContactOptions = spaceContactDefaults,
): LineOnBlank {
  const aroundRad = turningEvenly(mesh, loading, blank);
  let touching: LineOnBlank | undefined;
  let state = free;
  let iterations = 0;
  for (let round = 0; round < options.maxRounds; round++) {
    const touched = touchedPlaces(mesh, loading, blank, state, aroundRad);
    touching = supportedBy(touched, mesh, loading, blank, state.q);
    const bent = settle(touching, friction);
    touching = { ...touching, loading: bent.loading };
    iterations += bent.iterations;
    const moved = largestMove(state.place, touching.state.place);
    state = touching.state;
    if (!bent.converged) break;
    if (moved < options.settledM) return { ...touching, converged: true, iterations };
  }
  return { ...touching!, converged: false, iterations };
}

function settle({ mesh, loading, state, ringOfSupport }: LineOnBlank, friction: LineFriction | undefined) {
  const bent = followNearbyInSpace(mesh, loading, state);
  if (!bent.converged || !friction) return { loading, ...bent };
  const settled = settleFrictionInSpace(mesh, loading, onSupports(friction, ringOfSupport), state);
  return { ...settled, iterations: settled.iterations + bent.iterations };
}

/** Where the line crosses each node's plane if it turns evenly from ring to ring, the shorter way round. */
function turningEvenly(mesh: SpaceMesh, loading: SpaceLoading, { reelAroundRad }: RoundBlank): Float64Array {
  const angles = new Float64Array(mesh.count + 1);
  const { ringAroundRad } = loading.line as SpaceLine;
  mesh.ringNode.forEach((high, k) => {
    const isLast = k + 1 === mesh.ringNode.length;
    const low = isLast ? 0 : mesh.ringNode[k + 1];
    const turn = (isLast ? reelAroundRad : ringAroundRad[k + 1]) - ringAroundRad[k];
    const turnRad = turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI));
    const tipM = mesh.fromTipM[high];
    for (let node = high; node > low; node--) {
      const share = (mesh.fromTipM[node] - tipM) / (mesh.fromTipM[low] - tipM);
      angles[node] = ringAroundRad[k] + share * turnRad;
    }
  });
  return angles;
}

/** Where the line presses on the blank, from the tip inward; `aroundRad` keeps where it crosses every node's plane. */
function touchedPlaces(
  mesh: SpaceMesh,
  loading: SpaceLoading,
  blank: RoundBlank,
  state: SpaceState,
  aroundRad: Float64Array,
): TouchedCircle[] {
  const line = loading.line as SpaceLine;
  const rings = mesh.ringNode.length;
  return Array.from(mesh.ringNode).flatMap((high, k) => {
    const isLast = k + 1 === rings;
    const circles = circlesBetween(state, blank, aroundRad, high, isLast ? 0 : mesh.ringNode[k + 1]);
    const buttSide = isLast ? line.reelM : ringCentre(mesh, line, state, k + 1);
    const way = tautWay(ringCentre(mesh, line, state, k), buttSide, circles);
    circles.forEach(({ node }, i) => {
      aroundRad[node] = way.aroundRad[i];
    });
    return way.touched;
  });
}

function ringCentre(
  { ringNode }: SpaceMesh,
  line: SpaceLine,
  { place, frame }: SpaceState,
  k: number,
): number[] {
  const node = ringNode[k];
  return [0, 1, 2].map(
    (i) =>
      place[3 * node + i] +
      line.ringOffsetM[2 * k] * frame[9 * node + i] +
      line.ringOffsetM[2 * k + 1] * frame[9 * node + 3 + i],
  );
}

function circlesBetween(
  { place, frame }: SpaceState,
  { radiusM }: RoundBlank,
  aroundRad: Float64Array,
  high: number,
  low: number,
): Circle[] {
  return Array.from({ length: Math.max(0, high - low - 1) }, (_, i) => {
    const node = high - 1 - i;
    return {
      node,
      centre: Array.from(place.subarray(3 * node, 3 * node + 3)),
      d1: Array.from(frame.subarray(9 * node, 9 * node + 3)),
      d2: Array.from(frame.subarray(9 * node + 3, 9 * node + 6)),
      radiusM: radiusM[node],
      aroundRad: aroundRad[node],
    };
  });
}

/** The line through all rings and over the touched places. */
function supportedBy(
  touched: readonly TouchedCircle[],
  mesh: SpaceMesh,
  loading: SpaceLoading,
  { radiusM }: RoundBlank,
  q: Float64Array,
): LineOnBlank {
  const line = loading.line as SpaceLine;
  const supports = [
    ...Array.from(mesh.ringNode, (node, ring) => ({
      node,
      ring,
      heightM: line.ringHeightM[ring],
      aroundRad: line.ringAroundRad[ring],
    })),
    ...touched.map(({ node, aroundRad }) => ({ node, ring: -1, heightM: radiusM[node], aroundRad })),
  ].sort((a, b) => b.node - a.node);
  const withSupports: SpaceMesh = { ...mesh, ringNode: Int32Array.from(supports, ({ node }) => node) };
  const state = makeSpaceState(withSupports);
  state.q.set(q);
  return {
    mesh: withSupports,
    loading: {
      ...loading,
      line: {
        ...line,
        ringOffsetM: Float64Array.from(
          supports.flatMap(({ heightM, aroundRad }) => around(aroundRad).map((part) => part * heightM)),
        ),
        spanTensionN: new Float64Array(supports.length).fill(line.pullN),
        ringHeightM: Float64Array.from(supports, ({ heightM }) => heightM),
        ringAroundRad: Float64Array.from(supports, ({ aroundRad }) => aroundRad),
      },
    },
    state,
    ringOfSupport: Int32Array.from(supports, ({ ring }) => ring),
    converged: false,
    iterations: 0,
  };
}

function largestMove(a: Float64Array, b: Float64Array): number {
  let largest = 0;
  for (let i = 0; i < a.length; i++) largest = Math.max(largest, Math.abs(a[i] - b[i]));
  return largest;
}
