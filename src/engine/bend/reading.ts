/**
 * What a builder reads off the bent rod: the line angle in every ring, and for every span between two rings
 * the gap (line to blank) and the extra bend T·gap/EI that the line's standing off adds. Definitions: docs of
 * the engine door. Gaps are sampled at the nodes and refined by a parabola through the largest.
 */
import type { LineThroughRings, Workspace } from './equilibrium.ts';
import type { Mesh } from './mesh.ts';

export interface RingReading {
  xM: number;
  yM: number;
  /** Change of the line's direction in the ring, rad; undefined where no line runs on from it. */
  lineAngleRad: number;
}
export interface SpanReading {
  gapM: number;
  extraBendPerM: number;
}

/** `side` is +1 where the guides stand on the left normal ('over'), -1 for 'under'. */
export function readRings(mesh: Mesh, line: LineThroughRings, work: Workspace): RingReading[] {
  let ux = Math.cos(line.pullAngleRad);
  let uy = Math.sin(line.pullAngleRad);
  return Array.from(mesh.ringNode, (_, k) => {
    const vx = work.spanUx[k];
    const vy = work.spanUy[k];
    const lineAngleRad = Math.abs(Math.atan2(vx * uy - vy * ux, vx * ux + vy * uy));
    ux = vx;
    uy = vy;
    return { xM: work.ringXM[k], yM: work.ringYM[k], lineAngleRad };
  });
}

/** Spans between neighbouring rings, tip first. */
export function readSpans(mesh: Mesh, line: LineThroughRings, side: number, work: Workspace): SpanReading[] {
  const spans: SpanReading[] = [];
  for (let k = 0; k + 1 < mesh.ringNode.length; k++) spans.push(readSpan(mesh, line, side, work, k));
  return spans;
}

function readSpan(mesh: Mesh, line: LineThroughRings, side: number, work: Workspace, k: number): SpanReading {
  const tension = line.spanTensionN[k];
  const high = mesh.ringNode[k];
  const low = mesh.ringNode[k + 1];
  const clear = (node: number) => clearanceAt(line, side, work, k, node);
  let widest = 0;
  let widestNode = -1;
  let extraBendPerM = 0;
  let extraNode = -1;
  for (let node = low; node <= high; node++) {
    const gap = clear(node);
    if (gap > widest) {
      widest = gap;
      widestNode = node;
    }
    const extra = (tension * gap) / mesh.stiffnessNm2[node];
    if (extra > extraBendPerM) {
      extraBendPerM = extra;
      extraNode = node;
    }
  }
  const inner = (node: number) => node > low && node < high;
  if (inner(widestNode)) widest = parabolaTop(mesh, widestNode, clear);
  if (inner(extraNode)) {
    extraBendPerM = parabolaTop(mesh, extraNode, (node) => (tension * clear(node)) / mesh.stiffnessNm2[node]);
  }
  return { gapM: widest, extraBendPerM };
}

/** Distance of the axis from the chord towards the guides' side, less the ring height there. */
function clearanceAt(line: LineThroughRings, side: number, work: Workspace, k: number, node: number): number {
  const dx = work.xM[node] - work.ringXM[k + 1];
  const dy = work.yM[node] - work.ringYM[k + 1];
  const ux = work.spanUx[k];
  const uy = work.spanUy[k];
  const share = Math.min(1, Math.max(0, (dx * ux + dy * uy) / work.spanLengthM[k]));
  const standOff = -side * (dy * ux - dx * uy);
  const lowHeight = Math.abs(line.ringOffsetM[k + 1]);
  const highHeight = Math.abs(line.ringOffsetM[k]);
  return standOff - (lowHeight + share * (highHeight - lowHeight));
}

/** Top of the parabola through a node and its two neighbours. */
function parabolaTop(mesh: Mesh, node: number, value: (node: number) => number): number {
  const a = mesh.lengthM[node];
  const b = mesh.lengthM[node + 1];
  const here = value(node);
  const down = (value(node - 1) - here) / a;
  const up = (value(node + 1) - here) / b;
  const second = (down + up) / (a + b);
  if (!(second < 0)) return here;
  const slope = (up * a - down * b) / (a + b);
  return here - (slope * slope) / (4 * second);
}
