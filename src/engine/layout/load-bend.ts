/** How the rod of a ladder is bent under one load: kept from one layout to the next while guides move. */
import { type BendAnswer, rebend, type Side, sideSign } from '../bend/bend.ts';
import { type LineThroughRings, type Loading, makeWorkspace, type Workspace } from '../bend/equilibrium.ts';
import { followDefaults, followFromNearby, followLoad } from '../bend/follow.ts';
import { readSpansOverBlank } from '../bend/into-blank.ts';
import type { Mesh } from '../bend/mesh.ts';
import { type RingReading, readRings, readSpans, type SpanReading } from '../bend/reading.ts';
import { type PiecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';

export type BendStatus = BendAnswer['status'];

/** A bend on a mesh of one shape; the mesh itself may change a little from call to call. */
export interface LoadBend {
  /** Followed up from nothing. */
  follow(mesh: Mesh): BendStatus;
  /** Corrected from the bend at hand. */
  rebend(mesh: Mesh): BendStatus;
  /** One Newton step from the bend at hand: true to first order in how far the guides moved. */
  nudge(mesh: Mesh): void;
  /** This bend read off at the nodes of another mesh. */
  carriedTo(from: Mesh, to: Mesh): LoadBend;
  read(mesh: Mesh): { rings: RingReading[]; spans: SpanReading[] };
  /** Per node, from the clamp. */
  shape(): { xM: Float64Array; yM: Float64Array; angleRad: Float64Array; zM?: Float64Array };
}

/** Newton's first step is also its last. */
const oneStep = { ...followDefaults, toleranceRad: followDefaults.stepRad };

interface Held {
  buttAngleRad: number;
  side: Side;
  /** Outside diameter of the blank, where it is judged how deep the line would cut into it. */
  outside?: PiecewiseLinear;
}

export function planarLoadBend(mesh: Mesh, loading: Loading, held: Held): LoadBend {
  const { buttAngleRad } = held;
  const work = makeWorkspace(mesh);
  const line = loading.line!;
  return {
    follow: (now) => followLoad(now, loading, buttAngleRad, work).status,
    rebend: (now) => rebend(now, loading, buttAngleRad, work).status,
    nudge: (now) => void followFromNearby(now, loading, work, oneStep),
    carriedTo: (from, to) => {
      const next = planarLoadBend(to, loading, held);
      carryAngles(from, work.theta, to, next.shape().angleRad);
      return next;
    },
    read: (now) => ({
      rings: readRings(now, line, work),
      spans: spansOf(now, line, held, work),
    }),
    shape: () => ({ xM: work.xM, yM: work.yM, angleRad: work.theta }),
  };
}

function spansOf(
  mesh: Mesh,
  line: LineThroughRings,
  { side, outside }: Held,
  work: Workspace,
): SpanReading[] {
  if (!outside) return readSpans(mesh, line, sideSign(side), work);
  const radiusM = mesh.fromTipM.map((fromTipM) => 0.5 * valueAt(outside, fromTipM));
  return readSpansOverBlank(mesh, line, { side: sideSign(side), radiusM }, work);
}

/** Angles read off the old nodes at the places of the new ones (both run from the clamp to the tip). */
function carryAngles(from: Mesh, fromAngles: Float64Array, to: Mesh, toAngles: Float64Array): void {
  let e = 1;
  for (let j = 0; j <= to.count; j++) {
    const place = to.fromTipM[j];
    while (e < from.count && from.fromTipM[e] > place) e++;
    const share = (from.fromTipM[e - 1] - place) / from.lengthM[e];
    toAngles[j] = fromAngles[e - 1] + share * (fromAngles[e] - fromAngles[e - 1]);
  }
}
