/**
 * Guides on top: between two rings the line may lie on the blank. The line is a taut string, so it takes the
 * shortest way over the blank's surface; where it lies on it, the blank carries it like a ring whose centre is on
 * the surface. The energy stays T·(length of the line), and the contact is unilateral: a place that the line would
 * have to pull at is let go, one that it would cut through is taken up (the convex hull of the surface between two
 * rings, Andrew 1979). No friction on the blank unless friction is asked for; the line's own thickness is left out.
 */
import type { LineThroughRings, Loading, Workspace } from './equilibrium.ts';
import { makeWorkspace } from './equilibrium.ts';
import { followFromNearby } from './follow.ts';
import { type LineFriction, onSupports, settleFriction } from './friction.ts';
import type { Mesh } from './mesh.ts';

interface ContactOptions {
  maxRounds: number;
  /** The line may cut this deep into the blank before its place counts as touched. */
  depthM: number;
}
const contactDefaults: ContactOptions = { maxRounds: 80, depthM: 1e-6 };

/** The line held by rings and by the blank. */
interface TouchingLine {
  mesh: Mesh;
  loading: Loading;
  work: Workspace;
  /** Per support, tip first: the ring it is, or -1 where it is the blank. */
  ringOfSupport: Int32Array;
  converged: boolean;
  iterations: number;
}

/** Side of the guides and outside radius of the blank at every node. */
export interface BlankSurface {
  side: 1 | -1;
  radiusM: Float64Array;
}

/** `work` holds the bend without contact; it is left unchanged. */
export function settleContact(
  mesh: Mesh,
  loading: Loading,
  surface: BlankSurface,
  friction: LineFriction | undefined,
  work: Workspace,
  options: ContactOptions = contactDefaults,
): TouchingLine {
  let touching = supportedBy([], mesh, loading, surface, work.theta);
  let iterations = 0;
  for (let round = 0; round < options.maxRounds; round++) {
    const settled = settle(touching, friction);
    iterations += settled.iterations;
    touching = { ...touching, loading: settled.loading, converged: settled.converged, iterations };
    if (!settled.converged) return touching;
    const wanted = touchedNodes(mesh, loading, surface, touching.work);
    if (isSound(touching, wanted, surface, options)) return touching;
    touching = supportedBy(wanted, mesh, loading, surface, touching.work.theta);
  }
  return { ...touching, converged: false, iterations };
}

function settle({ mesh, loading, work, ringOfSupport }: TouchingLine, friction: LineFriction | undefined) {
  const bent = followFromNearby(mesh, loading, work);
  if (!bent.converged || !friction) return { loading, ...bent };
  const settled = settleFriction(mesh, loading, onSupports(friction, ringOfSupport), work);
  return { ...settled, iterations: settled.iterations + bent.iterations };
}

/** The line through all rings and over the touched nodes (from the tip inward, none of them a ring's). */
function supportedBy(
  touched: readonly number[],
  mesh: Mesh,
  loading: Loading,
  { side, radiusM }: BlankSurface,
  theta: Float64Array,
): TouchingLine {
  const line = loading.line as LineThroughRings;
  const supports = [
    ...Array.from(mesh.ringNode, (node, ring) => ({ node, ring, offsetM: line.ringOffsetM[ring] })),
    ...touched.map((node) => ({ node, ring: -1, offsetM: side * radiusM[node] })),
  ].sort((a, b) => b.node - a.node || a.ring - b.ring);
  const withSupports: Mesh = { ...mesh, ringNode: Int32Array.from(supports, ({ node }) => node) };
  const work = makeWorkspace(withSupports);
  work.theta.set(theta);
  return {
    mesh: withSupports,
    loading: {
      ...loading,
      line: {
        ...line,
        ringOffsetM: Float64Array.from(supports, ({ offsetM }) => offsetM),
        spanTensionN: new Float64Array(supports.length).fill(line.pullN),
      },
    },
    work,
    ringOfSupport: Int32Array.from(supports, ({ ring }) => ring),
    converged: false,
    iterations: 0,
  };
}

/** Nodes that a taut line between the rings would lie on, from the tip inward. */
function touchedNodes(mesh: Mesh, loading: Loading, surface: BlankSurface, work: Workspace): number[] {
  const line = loading.line as LineThroughRings;
  const rings = mesh.ringNode.length;
  const touched: number[] = [];
  for (let k = 0; k < rings; k++) {
    const high = mesh.ringNode[k];
    const low = k + 1 < rings ? mesh.ringNode[k + 1] : 0;
    const ends = {
      tipSide: standingOff(work, high, line.ringOffsetM[k]),
      buttSide:
        k + 1 < rings
          ? standingOff(work, low, line.ringOffsetM[k + 1])
          : { xM: line.reelXM, yM: line.reelYM, node: -1 },
    };
    touched.push(...hullNodes(ends, high, low, surface, work));
  }
  return touched;
}

export interface LinePlace {
  xM: number;
  yM: number;
}
interface Place extends LinePlace {
  node: number;
}

/** Inner corners of the shortest way from the tip side to the butt side that keeps to the guides' side. */
function hullNodes(
  ends: { tipSide: Place; buttSide: Place },
  high: number,
  low: number,
  surface: BlankSurface,
  work: Workspace,
): number[] {
  const between: Place[] = [];
  for (let node = high - 1; node > low; node--) between.push(onSurface(work, node, surface));
  return cornersOfWay(ends.tipSide, between, ends.buttSide, surface.side).map(({ node }) => node);
}

/** Those of the places, tip side first, that a taut line presses on which keeps to one side of all of them. */
export function cornersOfWay<P extends LinePlace>(
  tipSide: P,
  between: readonly P[],
  buttSide: P,
  side: number,
): P[] {
  const way: P[] = [tipSide];
  for (const next of [...between, buttSide]) {
    while (way.length > 1 && !standsOut(way[way.length - 2], way[way.length - 1], next, side)) way.pop();
    way.push(next);
  }
  return way.slice(1, -1);
}

/** Whether the middle place stands out towards the guides' side from the straight line between its neighbours. */
function standsOut(tipSide: LinePlace, middle: LinePlace, buttSide: LinePlace, side: number): boolean {
  const dx = tipSide.xM - buttSide.xM;
  const dy = tipSide.yM - buttSide.yM;
  return side * (dx * (middle.yM - buttSide.yM) - dy * (middle.xM - buttSide.xM)) > 0;
}

function onSurface(work: Workspace, node: number, { side, radiusM }: BlankSurface): Place {
  return standingOff(work, node, side * radiusM[node]);
}

function standingOff(work: Workspace, node: number, offsetM: number): Place {
  const angle = work.theta[node];
  return {
    xM: work.xM[node] - offsetM * Math.sin(angle),
    yM: work.yM[node] + offsetM * Math.cos(angle),
    node,
  };
}

/** True where the supports are those wanted, or differ only where the line cuts no deeper than allowed. */
function isSound(
  { mesh, ringOfSupport, work }: TouchingLine,
  wanted: readonly number[],
  surface: BlankSurface,
  options: ContactOptions,
): boolean {
  const supports = Array.from(mesh.ringNode, (node, k) => ({ node, xM: work.ringXM[k], yM: work.ringYM[k] }));
  const held = new Set(supports.filter((_, k) => ringOfSupport[k] < 0).map(({ node }) => node));
  const kept = wanted.filter((node) => held.has(node)).length;
  if (kept < held.size) return false;
  return wanted.every((node) => {
    if (held.has(node)) return true;
    const next = supports.findIndex((support) => support.node < node);
    if (next <= 0) return false;
    return (
      depthBelow(supports[next - 1], onSurface(work, node, surface), supports[next], surface.side) <=
      options.depthM
    );
  });
}

function depthBelow(tipSide: Place, middle: Place, buttSide: Place, side: number): number {
  const dx = tipSide.xM - buttSide.xM;
  const dy = tipSide.yM - buttSide.yM;
  const across = side * (dx * (middle.yM - buttSide.yM) - dy * (middle.xM - buttSide.xM));
  return across / Math.max(Math.hypot(dx, dy), 1e-12);
}
