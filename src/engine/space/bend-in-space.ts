/**
 * The bend of a rod in space under its own weight, masses, the line through rings that stand anywhere round it, a dead
 * force at the tip and sideways pulls; it may be rolled in the hand.
 *
 * Frame: that of bend/bend.ts, and z to the right seen from behind the butt. Assumptions: a round blank (equal
 * stiffness in both planes), inextensible, no shear; weightless line, no friction and no contact of line
 * and blank unless asked for.
 * Theory: docs/theory-space.md.
 */
import { bendDefaults } from '../bend/bend.ts';
import type { BlankContact } from '../bend/bend-request.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { followInSpace } from './follow-in-space.ts';
import { buildSpaceMesh, type SpaceMesh } from './mesh-in-space.ts';
import { bendStayingInPlane, inPlane } from './planar.ts';
import { answerRubbing, answerTouching } from './real-line-answer.ts';
import { type SolvedInSpace, type SpaceAnswer, spaceAnswer } from './space-answer.ts';
import { type SpaceRequest, spaceLoadingOf, spaceTables } from './space-request.ts';
import { makeSpaceState } from './state.ts';

export type { SpaceAnswer, SpacePoint } from './space-answer.ts';
export type {
  GuideRound,
  SpaceLoad,
  SpaceReel,
  SpaceRequest,
  SpaceRod,
  TorsionRow,
} from './space-request.ts';

/**
 * A request that stays in the plane is bent by the planar engine, unless the line rubs or may lie on the blank. Throws
 * on what the door would refuse.
 */
export function bendInSpace(request: SpaceRequest, options = bendDefaults): SpaceAnswer {
  const { friction, contact, load, reel, rollRad = 0 } = request;
  const planar = friction || contact ? undefined : inPlane(request);
  if (planar) return bendStayingInPlane(request, planar, options);
  const solved = solveInSpace(request, options);
  if (!load.line || !reel || solved.followed.status !== 'converged') return spaceAnswer(solved);
  if (contact) {
    const radiusM = radiiOf(contact, solved.mesh);
    return answerTouching(solved, { radiusM, reelAroundRad: reel.aroundRad + rollRad }, friction);
  }
  return friction ? answerRubbing(solved, friction) : spaceAnswer(solved);
}

/** Always by the engine in space, a plane bend too; without contact. */
export function solveInSpace(request: SpaceRequest, options = bendDefaults): SolvedInSpace {
  const rings = (request.guides ?? []).map((guide) => guide.fromTipM);
  const mesh = buildSpaceMesh(spaceTables(request.rod), rings, request.masses ?? [], options);
  const loading = spaceLoadingOf(request);
  const state = makeSpaceState(mesh);
  const followed = followInSpace(mesh, loading, state);
  return { mesh, loading, state, followed, buttAngleRad: request.buttAngleRad };
}

function radiiOf({ diameters }: BlankContact, { fromTipM }: SpaceMesh): Float64Array {
  const outside = piecewiseLinear(
    diameters.map((row) => row.fromTipM),
    diameters.map((row) => row.outsideM),
  );
  return fromTipM.map((at) => 0.5 * valueAt(outside, at));
}
