/**
 * The bend of a rod under its own weight, masses, the line through its rings and a dead force at the tip.
 *
 * Frame: origin where the blank leaves the clamp, x horizontal the way the rod points, y up, angles
 * counter-clockwise. Assumptions: planar, inextensible, no shear, weightless line, far pull; no friction and no
 * contact of line and blank unless asked for. Method: equilibrium.ts (energy), follow.ts (load followed up from
 * nothing), friction.ts, contact.ts. Theory: docs/theory-bend.md.
 */
import { type BendAnswer, type BendState, bendAnswer, surfaceOf } from './bend-answer.ts';
import { bendReason } from './bend-kinds.ts';
import { type BendRequest, loadingOf } from './bend-request.ts';
import { settleContact } from './contact.ts';
import { type Loading, makeWorkspace, type Workspace } from './equilibrium.ts';
import { type FollowResult, followFromNearby, followLoad } from './follow.ts';
import { settleFriction } from './friction.ts';
import { buildMesh, type Mesh } from './mesh.ts';
import { rodTables } from './rod.ts';

export type { BendAnswer, BendPoint, ContactReading } from './bend-answer.ts';
export type {
  BendLoad,
  BendRequest,
  BlankContact,
  GuideOnRod,
  LinePull,
  ReelPlace,
  Side,
} from './bend-request.ts';
export { loadingOf, sideSign } from './bend-request.ts';

export interface BendOptions {
  /** Elements on the rod; the error falls with its square (at the default 0.01 mm on most rods of 3 m, 0.1 mm on the worst). */
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
  const state = { mesh, loading, work };
  if (loading.line && followed.status === 'converged' && (request.friction || request.contact)) {
    return bendUnderRealLine(request, state, followed);
  }
  return bendAnswer(request, state, followed);
}

/** From the free line's bend to the one of a line that rubs in its rings or lies on the blank. */
function bendUnderRealLine(request: BendRequest, free: BendState, followed: FollowResult): BendAnswer {
  const { friction } = request;
  const { mesh, loading, work } = free;
  const surface = request.contact && surfaceOf(request.contact, request, mesh);
  const settled = surface
    ? settleContact(mesh, loading, surface, friction, work)
    : { ...free, ...settleFriction(mesh, loading, friction!, work) };
  const result: FollowResult = { ...followed, iterations: followed.iterations + settled.iterations };
  const answer = bendAnswer(request, settled, result, surface);
  if (settled.converged) return answer;
  const cause = surface ? 'bend/contact-unsettled' : 'bend/friction-unsettled';
  return { ...answer, status: 'not-converged', reason: bendReason(cause, {}) };
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
