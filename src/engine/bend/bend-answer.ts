/**
 * What the solver found, as the answer shows it: points tip first with their curvature, rings, spans, the reason
 * where there is no equilibrium, and the tensions and contacts of a line that rubs or lies on the blank.
 */
import type { Reason } from '../finding.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { bendReason } from './bend-kinds.ts';
import { type BendRequest, type BlankContact, type GuideOnRod, sideSign } from './bend-request.ts';
import { type ClearInterval, clearIntervals } from './clear-interval.ts';
import type { BlankSurface } from './contact.ts';
import {
  assemble,
  type LineThroughRings,
  type Loading,
  makeWorkspace,
  placeNodes,
  type Workspace,
} from './equilibrium.ts';
import { type FollowResult, followDefaults } from './follow.ts';
import { readSpansOverBlank } from './into-blank.ts';
import type { Mesh } from './mesh.ts';
import { type RingReading, readRings, readSpans, type SpanReading } from './reading.ts';

export interface BendPoint {
  fromTipM: number;
  xM: number;
  yM: number;
  angleRad: number;
  curvaturePerM: number;
}
export interface BendAnswer {
  status: 'converged' | 'branch-lost' | 'not-converged';
  /** Why the status is not 'converged'. */
  reason?: Reason;
  /** Tip first. */
  points: BendPoint[];
  rings: RingReading[];
  /** Between neighbouring rings, tip first. */
  spans: SpanReading[];
  /** With friction only: tension behind every ring, tip first; the last is the tension at the reel. */
  lineTensionN?: number[];
  /** With contact only. */
  contact?: ContactReading;
  iterations: number;
  /** Largest moment out of balance at any node, N·m. */
  residual: number;
}

export interface ContactReading {
  /** Every stretch behind a ring, tip first; the last runs to the reel. */
  stretches: { touches: boolean; touchedFromTipM?: number; touchedToTipM?: number }[];
  /** Largest interval from each ring towards the butt that would stay clear of the blank in this bend. */
  clear: ClearInterval[];
}

/** A bend as solved; with contact, its supports are the rings and the touched places of the blank. */
export interface BendState {
  mesh: Mesh;
  loading: Loading;
  work: Workspace;
  /** Per support, tip first: the ring it is, or -1 where it is the blank; left out where all are rings. */
  ringOfSupport?: Int32Array;
}

export function bendAnswer(
  request: BendRequest,
  state: BendState,
  followed: FollowResult,
  surface?: BlankSurface,
): BendAnswer {
  const { mesh, loading, work } = state;
  const guides = request.guides ?? [];
  assemble(mesh, loading, followed.factor, work);
  let residual = 0;
  for (let i = 0; i < mesh.count; i++) {
    residual = Math.max(residual, Math.abs(work.bendGradient[i] + followed.factor * work.loadGradient[i]));
  }
  return {
    status: followed.status,
    ...(followed.status === 'converged' ? {} : { reason: reasonOf(followed, guides.length) }),
    points: bendPoints(mesh, loading, followed.factor, work),
    ...(loading.line ? lineAnswer(request, guides, state, loading.line, surface) : { rings: [], spans: [] }),
    iterations: followed.iterations,
    residual,
  };
}

function lineAnswer(
  request: BendRequest,
  guides: readonly GuideOnRod[],
  state: BendState,
  line: LineThroughRings,
  surface: BlankSurface | undefined,
): Pick<BendAnswer, 'rings' | 'spans' | 'lineTensionN' | 'contact'> {
  const { mesh, work, ringOfSupport } = state;
  const depth = request.depthInto && surfaceOf(request.depthInto, request, mesh);
  const isRing = (k: number) => !ringOfSupport || ringOfSupport[k] >= 0;
  const rings = readRings(mesh, line, work).filter((_, k) => isRing(k));
  const tensions = line.spanTensionN.filter((_, k) => isRing(k));
  const chords = ringOfSupport
    ? throughRingsOnly(state, line, ringOfSupport, tensions)
    : { mesh, line, work };
  return {
    rings,
    spans: depth
      ? readSpansOverBlank(chords.mesh, chords.line, depth, chords.work)
      : readSpans(chords.mesh, chords.line, sideSign(guides[0].side), chords.work),
    ...(request.friction ? { lineTensionN: tensionsToReel(tensions, line) } : {}),
    ...(surface && ringOfSupport
      ? {
          contact: {
            stretches: touchedStretches(mesh, ringOfSupport),
            clear: clearIntervals(chords.mesh, chords.line, surface, chords.work),
          },
        }
      : {}),
  };
}

/** The blank as the line meets it: on the guides' side, as thick as told. */
export function surfaceOf(
  { diameters }: BlankContact,
  { guides = [] }: BendRequest,
  mesh: Mesh,
): BlankSurface {
  const outside = piecewiseLinear(
    diameters.map((row) => row.fromTipM),
    diameters.map((row) => row.outsideM),
  );
  return {
    side: sideSign(guides[0].side),
    radiusM: mesh.fromTipM.map((fromTipM) => 0.5 * valueAt(outside, fromTipM)),
  };
}

/** Behind every ring; the last one at the reel itself, past all that the line rubs on between it and the last ring. */
function tensionsToReel(behindRings: Float64Array, { spanTensionN }: LineThroughRings): number[] {
  return [...behindRings.subarray(0, -1), spanTensionN[spanTensionN.length - 1]];
}

/** The same bend with straight chords from ring to ring: gaps are counted from these. */
function throughRingsOnly(
  { mesh, work }: BendState,
  line: LineThroughRings,
  ringOfSupport: Int32Array,
  spanTensionN: Float64Array,
) {
  const isRing = (_: number, k: number) => ringOfSupport[k] >= 0;
  const bare: Mesh = { ...mesh, ringNode: mesh.ringNode.filter(isRing) };
  const chords = { ...line, ringOffsetM: line.ringOffsetM.filter(isRing), spanTensionN };
  const own = makeWorkspace(bare);
  own.theta.set(work.theta);
  placeNodes(bare, chords, own);
  return { mesh: bare, line: chords, work: own };
}

export function touchedStretches(mesh: Mesh, ringOfSupport: Int32Array): ContactReading['stretches'] {
  const stretches: ContactReading['stretches'] = [];
  ringOfSupport.forEach((ring, k) => {
    if (ring >= 0) stretches.push({ touches: false });
    else {
      const stretch = stretches[stretches.length - 1];
      const fromTipM = mesh.fromTipM[mesh.ringNode[k]];
      stretch.touches = true;
      stretch.touchedFromTipM ??= fromTipM;
      stretch.touchedToTipM = fromTipM;
    }
  });
  return stretches;
}

export function reasonOf(followed: FollowResult, rings: number): Reason {
  const { closedSpan, status, factor, followedTo } = followed;
  if (closedSpan !== undefined) {
    const ring = closedSpan + 1;
    return bendReason('bend/line-closes', { reachedPercent: 100 * factor, ring, isLast: ring >= rings });
  }
  return status === 'branch-lost'
    ? bendReason('bend/snaps', { reachedPercent: 100 * followedTo })
    : bendReason('bend/lost', { reachedPercent: 100 * factor, steps: followDefaults.maxIterations });
}

/** Curvature of a node from the mean of the moments on its two sides (a ring's moment makes them differ). */
function bendPoints(mesh: Mesh, loading: Loading, factor: number, work: Workspace): BendPoint[] {
  const n = mesh.count;
  const points: BendPoint[] = new Array(n + 1);
  const elementCurvature = (e: number) => (work.theta[e] - work.theta[e - 1]) / mesh.lengthM[e];
  for (let j = 0; j <= n; j++) {
    let curvaturePerM: number;
    if (j === 0) curvaturePerM = clampCurvature(mesh, elementCurvature);
    else if (j === n) curvaturePerM = tipCurvature(mesh, loading, factor, work);
    else {
      const a = mesh.lengthM[j];
      const b = mesh.lengthM[j + 1];
      curvaturePerM = (b * elementCurvature(j) + a * elementCurvature(j + 1)) / (a + b);
    }
    points[n - j] = {
      fromTipM: mesh.fromTipM[j],
      xM: work.xM[j],
      yM: work.yM[j],
      angleRad: work.theta[j],
      curvaturePerM,
    };
  }
  return points;
}

/** Line through the middles of the first two elements, taken on to the clamp. */
function clampCurvature(mesh: Mesh, elementCurvature: (e: number) => number): number {
  const first = elementCurvature(1);
  const slope = (elementCurvature(2) - first) / (0.5 * (mesh.lengthM[1] + mesh.lengthM[2]));
  return first - slope * 0.5 * mesh.lengthM[1];
}

/** At the tip the moment is the tip-top ring's alone. */
function tipCurvature(mesh: Mesh, loading: Loading, factor: number, work: Workspace): number {
  const n = mesh.count;
  const ring = loading.line ? work.ringAtNode[n] : -1;
  const moment = ring >= 0 ? factor * work.ringMoment[ring] : 0;
  return mesh.restTurn[n] / mesh.lengthM[n] + moment / mesh.stiffnessNm2[n];
}
