/**
 * How far the next guide may stand from a place on the bent blank before the straight line between their ring
 * centres touches the blank. The bend is held as it is: for one load, and for rings of the heights that the guides
 * have there (linear between guides, constant beyond).
 */
import type { BlankSurface } from './contact.ts';
import type { LineThroughRings, Workspace } from './equilibrium.ts';
import type { Mesh } from './mesh.ts';

export interface ClearInterval {
  fromTipM: number;
  /** Towards the butt; as far as the clamp where nothing touches before. */
  largestClearM: number;
}

/** One for every ring, tip-top first. */
export function clearIntervals(
  mesh: Mesh,
  line: LineThroughRings,
  surface: BlankSurface,
  work: Workspace,
): ClearInterval[] {
  const centres = offsetPlaces(work, ringOffsetsAtNodes(mesh, line));
  const blank = offsetPlaces(
    work,
    surface.radiusM.map((radius) => surface.side * radius),
  );
  return Array.from(mesh.ringNode, (node) => ({
    fromTipM: mesh.fromTipM[node],
    largestClearM: clearFrom(node, mesh, centres, blank, surface.side),
  }));
}

interface Places {
  xM: Float64Array;
  yM: Float64Array;
}

/** Places that stand off the axis along the left normal, one per node. */
function offsetPlaces(work: Workspace, offsetM: Float64Array): Places {
  return {
    xM: offsetM.map((offset, node) => work.xM[node] - offset * Math.sin(work.theta[node])),
    yM: offsetM.map((offset, node) => work.yM[node] + offset * Math.cos(work.theta[node])),
  };
}

function ringOffsetsAtNodes(mesh: Mesh, { ringOffsetM }: LineThroughRings): Float64Array {
  const { ringNode, fromTipM } = mesh;
  let next = 0;
  const offsets = new Float64Array(fromTipM.length);
  for (let node = fromTipM.length - 1; node >= 0; node--) {
    while (next < ringNode.length && ringNode[next] > node) next++;
    if (next === 0 || next === ringNode.length) offsets[node] = ringOffsetM[Math.max(0, next - 1)];
    else {
      const [tipSide, buttSide] = [fromTipM[ringNode[next - 1]], fromTipM[ringNode[next]]];
      const share = buttSide > tipSide ? (fromTipM[node] - tipSide) / (buttSide - tipSide) : 1;
      offsets[node] = ringOffsetM[next - 1] + share * (ringOffsetM[next] - ringOffsetM[next - 1]);
    }
  }
  return offsets;
}

function clearFrom(start: number, mesh: Mesh, centres: Places, blank: Places, side: number): number {
  let before = Number.POSITIVE_INFINITY;
  for (let end = start - 2; end >= 0; end--) {
    const clearance = leastClearance(start, end, centres, blank, side);
    if (clearance < 0) {
      // the edge lies between the last two ends tried
      const share = Number.isFinite(before) ? before / (before - clearance) : 0;
      return mesh.fromTipM[end + 1] + share * mesh.lengthM[end + 1] - mesh.fromTipM[start];
    }
    before = clearance;
  }
  return mesh.fromTipM[0] - mesh.fromTipM[start];
}

/** Least distance of the blank's surface from the chord, counted towards the side away from the guides. */
function leastClearance(start: number, end: number, centres: Places, blank: Places, side: number): number {
  const dx = centres.xM[start] - centres.xM[end];
  const dy = centres.yM[start] - centres.yM[end];
  const length = Math.max(Math.hypot(dx, dy), 1e-12);
  let largest = Number.NEGATIVE_INFINITY;
  for (let node = end + 1; node < start; node++) {
    const across = dx * (blank.yM[node] - centres.yM[end]) - dy * (blank.xM[node] - centres.xM[end]);
    largest = Math.max(largest, side * across);
  }
  return -largest / length;
}
