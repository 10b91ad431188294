/**
 * What a builder reads off the rod bent in space: bend/reading.ts, with the line angle taken in space, and the gap
 * counted towards where the rings stand: between two rings of unlike directions that direction turns evenly from one
 * to the other.
 */
import { largestInSpan, type RingReading, type SpanReading } from '../bend/reading.ts';
import type { SpaceMesh } from './mesh-in-space.ts';
import { around } from './space-request.ts';
import type { SpaceLine, SpaceState } from './state.ts';

export interface SpaceRingReading extends RingReading {
  zM: number;
}

export function readRingsInSpace(
  line: SpaceLine,
  { ring, span, spanLengthM }: SpaceState,
): SpaceRingReading[] {
  let [ux, uy, uz] = line.pull;
  return Array.from(spanLengthM, (_, k) => {
    const vx = span[3 * k];
    const vy = span[3 * k + 1];
    const vz = span[3 * k + 2];
    const across = Math.hypot(uy * vz - uz * vy, uz * vx - ux * vz, ux * vy - uy * vx);
    const lineAngleRad = Math.atan2(across, ux * vx + uy * vy + uz * vz);
    [ux, uy, uz] = [vx, vy, vz];
    return { xM: ring[3 * k], yM: ring[3 * k + 1], zM: ring[3 * k + 2], lineAngleRad };
  });
}

/** Spans between neighbouring rings, tip first. */
export function readSpansInSpace(mesh: SpaceMesh, line: SpaceLine, state: SpaceState): SpanReading[] {
  return Array.from({ length: mesh.ringNode.length - 1 }, (_, k) => readSpan(mesh, line, state, k));
}

function readSpan(mesh: SpaceMesh, line: SpaceLine, state: SpaceState, k: number): SpanReading {
  const chord = chordOf(line, state, k);
  return largestInSpan(mesh, {
    low: mesh.ringNode[k + 1],
    high: mesh.ringNode[k],
    tensionN: line.spanTensionN[k],
    gapAt: (node) => standingOff(chord, state, mesh, node, 0),
    gapBeside: (node, u) => standingOff(chord, state, mesh, node, u),
  });
}

/** The straight line between two neighbouring ring centres, from the butt side. */
interface Chord {
  from: readonly [number, number, number];
  u: readonly [number, number, number];
  lengthM: number;
  lowHeightM: number;
  riseM: number;
  lowAroundRad: number;
  turnRad: number;
}

function chordOf(line: SpaceLine, { ring, span, spanLengthM }: SpaceState, k: number): Chord {
  const { ringHeightM, ringAroundRad } = line;
  const turn = ringAroundRad[k] - ringAroundRad[k + 1];
  return {
    from: [ring[3 * k + 3], ring[3 * k + 4], ring[3 * k + 5]],
    u: [span[3 * k], span[3 * k + 1], span[3 * k + 2]],
    lengthM: spanLengthM[k],
    lowHeightM: ringHeightM[k + 1],
    riseM: ringHeightM[k] - ringHeightM[k + 1],
    lowAroundRad: ringAroundRad[k + 1],
    turnRad: turn - 2 * Math.PI * Math.round(turn / (2 * Math.PI)),
  };
}

/** How far the chord stands off the axis beyond the rings' height; `beside` from -1, the node below, to 1. */
function standingOff(chord: Chord, state: SpaceState, mesh: SpaceMesh, node: number, beside: number): number {
  const { place, frame } = state;
  const e = beside < 0 ? node : Math.min(node + 1, mesh.count);
  const t = beside < 0 ? 1 + beside : node + 1 > mesh.count ? 1 : beside;
  const h = mesh.lengthM[e];
  const start = (1 + 2 * t) * (1 - t) * (1 - t);
  const leave = h * t * (1 - t) * (1 - t);
  const arrive = -h * t * t * (1 - t);
  const { from, u } = chord;
  const a = 9 * (e - 1);
  const b = 9 * e;
  const at = (i: number) =>
    start * place[3 * e - 3 + i] +
    (1 - start) * place[3 * e + i] +
    leave * frame[a + 6 + i] +
    arrive * frame[b + 6 + i] -
    from[i];
  const x = at(0);
  const y = at(1);
  const z = at(2);
  const along = Math.min(chord.lengthM, Math.max(0, x * u[0] + y * u[1] + z * u[2]));
  const share = along / chord.lengthM;
  const [c1, c2] = around(chord.lowAroundRad + share * chord.turnRad);
  const towards = (i: number) =>
    c1 * ((1 - t) * frame[a + i] + t * frame[b + i]) +
    c2 * ((1 - t) * frame[a + 3 + i] + t * frame[b + 3 + i]);
  const p = towards(0);
  const q = towards(1);
  const r = towards(2);
  const tilt = p * u[0] + q * u[1] + r * u[2];
  const px = p - tilt * u[0];
  const py = q - tilt * u[1];
  const pz = r - tilt * u[2];
  const off = -(x * px + y * py + z * pz) / Math.sqrt(px * px + py * py + pz * pz);
  return off - (chord.lowHeightM + share * chord.riseM);
}
