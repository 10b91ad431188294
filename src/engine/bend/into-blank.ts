/**
 * Guides on top: how deep the straight line between two neighbouring rings would cut into the blank, for every span.
 * At a place of the axis that is the blank's radius there less the chord's distance from the axis towards the guides'
 * side; the largest of it over the span counts, the rings' own places left out. Negative: the line clears the blank by
 * as much. Beyond 0 it lies on the blank (contact.ts).
 */
import type { BlankSurface } from './contact.ts';
import type { LineThroughRings, Workspace } from './equilibrium.ts';
import type { Mesh } from './mesh.ts';
import {
  type Chord,
  chordOf,
  clearance,
  clearanceBeside,
  peakNear,
  readSpans,
  type SpanReading,
} from './reading.ts';

/** Spans read as ever, each with how deep its straight line would cut into the blank. */
export function readSpansOverBlank(
  mesh: Mesh,
  line: LineThroughRings,
  surface: BlankSurface,
  work: Workspace,
): SpanReading[] {
  const depths = readIntoBlank(mesh, line, surface, work);
  return readSpans(mesh, line, surface.side, work).map((span, k) => ({ ...span, intoBlankM: depths[k] }));
}

/** Spans between neighbouring rings, tip first. */
export function readIntoBlank(
  mesh: Mesh,
  line: LineThroughRings,
  surface: BlankSurface,
  work: Workspace,
): number[] {
  return Array.from({ length: mesh.ringNode.length - 1 }, (_, k) => {
    const chord: Chord = { ...chordOf(line, surface.side, work, k), lowHeightM: 0, risePerM: 0 };
    return deepest(mesh, chord, surface, work, { low: mesh.ringNode[k + 1], high: mesh.ringNode[k] });
  });
}

function deepest(
  mesh: Mesh,
  chord: Chord,
  { radiusM }: BlankSurface,
  work: Workspace,
  { low, high }: { low: number; high: number },
): number {
  const depthAt = (node: number) => radiusM[node] - clearance(chord, work.xM[node], work.yM[node]);
  let most = Number.NEGATIVE_INFINITY;
  let at = low;
  for (let node = low + 1; node < high; node++) {
    const depth = depthAt(node);
    if (!(depth > most)) continue;
    most = depth;
    at = node;
  }
  if (at === low) return Math.max(depthAt(low), depthAt(high));
  // beside a ring it only falls away from it: nothing to refine
  if (at === low + 1 || at === high - 1) return most;
  const radiusBeside = (u: number) =>
    radiusM[at] + Math.abs(u) * (radiusM[u < 0 ? at - 1 : at + 1] - radiusM[at]);
  return peakNear((u) => radiusBeside(u) - clearanceBeside(mesh, work, chord, at, u));
}
