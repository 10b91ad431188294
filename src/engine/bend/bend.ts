/**
 * The bend of a rod under its own weight, masses, the line through its rings and a dead force at the tip.
 *
 * Frame: origin where the blank leaves the clamp, x horizontal the way the rod points, y up, angles
 * counter-clockwise. Assumptions: planar, inextensible, no shear, weightless frictionless line, far pull.
 * Method: equilibrium.ts (energy), follow.ts (load followed up from nothing).
 */
import {
  assemble,
  type LineThroughRings,
  type Loading,
  makeWorkspace,
  type Workspace,
} from './equilibrium.ts';
import { type FollowResult, followDefaults, followFromNearby, followLoad } from './follow.ts';
import { buildMesh, type Mesh, type PointMass } from './mesh.ts';
import { type RingReading, readRings, readSpans, type SpanReading } from './reading.ts';
import { type Rod, rodTables } from './rod.ts';

export type Side = 'under' | 'over';

export interface GuideOnRod {
  fromTipM: number;
  /** Distance of the ring's centre from the blank's axis. */
  ringHeightM: number;
  side: Side;
}
/** Where the line leaves the reel: along the butt axis from the origin, and off it to the guides' side. */
export interface ReelPlace {
  alongM: number;
  offsetM: number;
}
export interface LinePull {
  tensionN: number;
  /** Direction towards the far point that the line leaves the tip-top to. */
  pullAngleRad: number;
}
export interface BendLoad {
  line?: LinePull;
  /** Dead force at the tip, on the axis. */
  tip?: { xN: number; yN: number };
}
export interface BendRequest {
  rod: Rod;
  buttAngleRad: number;
  masses?: readonly PointMass[];
  /** Tip-top first, at 0, then towards the butt. */
  guides?: readonly GuideOnRod[];
  reel?: ReelPlace;
  load: BendLoad;
}

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
  reason?: string;
  /** Tip first. */
  points: BendPoint[];
  rings: RingReading[];
  spans: SpanReading[];
  iterations: number;
  /** Largest moment out of balance at any node, N·m. */
  residual: number;
}

export interface BendOptions {
  /** Elements on the rod; the error falls with its square (0.02 mm on a 3 m rod at the default). */
  resolution: number;
}
export const bendDefaults: BendOptions = { resolution: 300 };

/** Throws only on requests that the door would refuse (a line without reel or rings, non-ascending tables). */
export function bend(request: BendRequest, options: BendOptions = bendDefaults): BendAnswer {
  const guides = request.guides ?? [];
  const mesh = buildMesh(
    rodTables(request.rod),
    guides.map((guide) => guide.fromTipM),
    request.masses ?? [],
    options,
  );
  const work = makeWorkspace(mesh);
  const loading = loadingOf(request);
  const followed = followLoad(mesh, loading, request.buttAngleRad, work);
  return bendAnswer(mesh, loading, guides, work, followed);
}

/** The same rod, guides and load with other numbers: corrected from the state at hand where that is nearby. */
export function rebend(
  mesh: Mesh,
  loading: Loading,
  buttAngleRad: number,
  work: Workspace,
): Pick<FollowResult, 'status' | 'iterations'> {
  const nearby = followFromNearby(mesh, loading, work);
  if (nearby.converged) return { status: 'converged', iterations: nearby.iterations };
  const followed = followLoad(mesh, loading, buttAngleRad, work);
  return { status: followed.status, iterations: nearby.iterations + followed.iterations };
}

/** The load in the solver's terms; a line needs at least one ring and a reel. */
export function loadingOf(request: Omit<BendRequest, 'rod' | 'masses'>): Loading {
  const { line: pull, tip } = request.load;
  return {
    line: pull ? lineOf(request, pull) : undefined,
    tipXN: tip?.xN ?? 0,
    tipYN: tip?.yN ?? 0,
  };
}

function lineOf(request: Omit<BendRequest, 'rod' | 'masses'>, pull: LinePull): LineThroughRings {
  const guides = request.guides ?? [];
  if (guides.length === 0 || !request.reel) throw new Error('a line needs guides and a reel');
  const { alongM, offsetM } = request.reel;
  const c = Math.cos(request.buttAngleRad);
  const s = Math.sin(request.buttAngleRad);
  const off = sideSign(guides[0].side) * offsetM;
  return {
    ringOffsetM: Float64Array.from(guides, (guide) => sideSign(guide.side) * guide.ringHeightM),
    reelXM: alongM * c - off * s,
    reelYM: alongM * s + off * c,
    spanTensionN: new Float64Array(guides.length).fill(pull.tensionN),
    pullN: pull.tensionN,
    pullAngleRad: pull.pullAngleRad,
  };
}

/** +1 where the ring stands on the left normal of the axis (over a level rod that points along +x). */
export function sideSign(side: Side): 1 | -1 {
  return side === 'over' ? 1 : -1;
}

function bendAnswer(
  mesh: Mesh,
  loading: Loading,
  guides: readonly GuideOnRod[],
  work: Workspace,
  followed: FollowResult,
): BendAnswer {
  const { line } = loading;
  assemble(mesh, loading, followed.factor, work);
  let residual = 0;
  for (let i = 0; i < mesh.count; i++) {
    residual = Math.max(residual, Math.abs(work.bendGradient[i] + followed.factor * work.loadGradient[i]));
  }
  return {
    status: followed.status,
    ...(followed.status === 'converged' ? {} : { reason: reasonOf(followed, guides.length) }),
    points: bendPoints(mesh, loading, followed.factor, work),
    rings: line ? readRings(mesh, line, work) : [],
    spans: line ? readSpans(mesh, line, sideSign(guides[0].side), work) : [],
    iterations: followed.iterations,
    residual,
  };
}

function reasonOf(followed: FollowResult, rings: number): string {
  const share = (100 * followed.followedTo).toFixed(1);
  const { closedSpan } = followed;
  if (closedSpan !== undefined) {
    const reached = (100 * followed.factor).toFixed(1);
    return `beyond ${reached} % of the load the line pulls ring ${closedSpan + 1} from the tip against ${closedSpan + 1 < rings ? 'the next ring' : 'the reel'}: the rod is too soft there for this pull; the bend shown is that part of the load`;
  }
  return followed.status === 'branch-lost'
    ? `at ${share} % of the load the rod has no stable bend near the one it followed and snaps to another; the bend shown is the one it falls into`
    : `no equilibrium was found beyond ${(100 * followed.factor).toFixed(2)} % of the load in ${followDefaults.maxIterations} steps; the bend shown is that part of the load`;
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
