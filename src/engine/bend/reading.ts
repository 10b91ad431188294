/**
 * What a builder reads off the bent rod: the line angle in every ring, and for every span between two rings
 * the gap (line to blank) and the extra bend T·gap/EI that the line's standing off adds. Definitions: docs of
 * the engine door. Gaps are sampled at the nodes and refined beside the largest by cubics through places and angles.
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
  /** How deep the straight line would cut into the blank, negative where it clears it: into-blank.ts, where it is asked for. */
  intoBlankM?: number;
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
  const chord = chordOf(line, side, work, k);
  return largestInSpan(mesh, {
    low: mesh.ringNode[k + 1],
    high: mesh.ringNode[k],
    tensionN: line.spanTensionN[k],
    gapAt: (node) => clearance(chord, work.xM[node], work.yM[node]),
    gapBeside: (node, u) => clearanceBeside(mesh, work, chord, node, u),
  });
}

/** A span between two nodes with a ring; `gapBeside` by u from -1, the node below, over 0 to 1, the node above. */
interface SampledSpan {
  low: number;
  high: number;
  tensionN: number;
  gapAt(node: number): number;
  gapBeside(node: number, u: number): number;
}

/** The largest of each reading in a span, at its nodes and beside the largest of them. */
export function largestInSpan(
  mesh: Pick<Mesh, 'lengthM' | 'stiffnessNm2'>,
  { low, high, tensionN, gapAt, gapBeside }: SampledSpan,
): SpanReading {
  let gapM = 0;
  let widestNode = -1;
  let extraBendPerM = 0;
  let extraNode = -1;
  for (let node = low; node <= high; node++) {
    const gap = gapAt(node);
    if (gap > gapM) {
      gapM = gap;
      widestNode = node;
    }
    const extra = (tensionN * gap) / mesh.stiffnessNm2[node];
    if (extra > extraBendPerM) {
      extraBendPerM = extra;
      extraNode = node;
    }
  }
  const inner = (node: number) => node > low && node < high;
  if (inner(widestNode)) gapM = peakNear((u) => gapBeside(widestNode, u));
  if (inner(extraNode)) {
    extraBendPerM = peakNear(
      (u) => (tensionN * gapBeside(extraNode, u)) / stiffnessBeside(mesh, extraNode, u),
    );
  }
  return { gapM, extraBendPerM };
}

/** The straight line between two neighbouring ring centres, from the butt side. */
export interface Chord {
  xM: number;
  yM: number;
  ux: number;
  uy: number;
  lengthM: number;
  lowHeightM: number;
  risePerM: number;
  side: number;
}

export function chordOf(line: LineThroughRings, side: number, work: Workspace, k: number): Chord {
  const lowHeightM = Math.abs(line.ringOffsetM[k + 1]);
  const lengthM = work.spanLengthM[k];
  return {
    xM: work.ringXM[k + 1],
    yM: work.ringYM[k + 1],
    ux: work.spanUx[k],
    uy: work.spanUy[k],
    lengthM,
    lowHeightM,
    risePerM: (Math.abs(line.ringOffsetM[k]) - lowHeightM) / lengthM,
    side,
  };
}

/** Distance of a place of the axis from the chord towards the guides' side, less the ring height there. */
export function clearance(chord: Chord, xM: number, yM: number): number {
  const dx = xM - chord.xM;
  const dy = yM - chord.yM;
  const along = Math.min(chord.lengthM, Math.max(0, dx * chord.ux + dy * chord.uy));
  return -chord.side * (dy * chord.ux - dx * chord.uy) - (chord.lowHeightM + along * chord.risePerM);
}

/** The same between nodes: u from -1, the node below, over 0 to 1, the node above; cubic through places and angles. */
export function clearanceBeside(mesh: Mesh, work: Workspace, chord: Chord, node: number, u: number): number {
  const e = u < 0 ? node : node + 1;
  const t = u < 0 ? 1 + u : u;
  const h = mesh.lengthM[e];
  const { xM, yM, theta } = work;
  const start = (1 + 2 * t) * (1 - t) * (1 - t);
  const leave = h * t * (1 - t) * (1 - t);
  const arrive = -h * t * t * (1 - t);
  return clearance(
    chord,
    start * xM[e - 1] + (1 - start) * xM[e] + leave * Math.cos(theta[e - 1]) + arrive * Math.cos(theta[e]),
    start * yM[e - 1] + (1 - start) * yM[e] + leave * Math.sin(theta[e - 1]) + arrive * Math.sin(theta[e]),
  );
}

/** EI between nodes, its logarithm a parabola through three of them. */
function stiffnessBeside(
  { lengthM, stiffnessNm2 }: Pick<Mesh, 'lengthM' | 'stiffnessNm2'>,
  node: number,
  u: number,
): number {
  const a = lengthM[node];
  const b = lengthM[node + 1];
  const at = u < 0 ? u * a : u * b;
  const down = Math.log(stiffnessNm2[node - 1] / stiffnessNm2[node]) / a;
  const up = Math.log(stiffnessNm2[node + 1] / stiffnessNm2[node]) / b;
  const second = (down + up) / (a + b);
  const slope = (up * a - down * b) / (a + b);
  return stiffnessNm2[node] * Math.exp(at * (slope + second * at));
}

/** Largest value within an element of the node: of seven places, then the top of the parabola about it. */
export function peakNear(value: (u: number) => number): number {
  const step = 0.25;
  let best = 0;
  let most = value(0);
  for (let i = -3; i <= 3; i++) {
    const here = i === 0 ? most : value(i * step);
    if (here > most) {
      most = here;
      best = i;
    }
  }
  const down = value((best - 1) * step) - most;
  const up = value((best + 1) * step) - most;
  const second = down + up;
  return second < 0 ? most - (up - down) ** 2 / (8 * second) : most;
}
