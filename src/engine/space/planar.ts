/**
 * A request that names torsion, angles round the rod or sideways pulls and yet stays in the plane of the rod is bent by
 * the planar engine, digit for digit; what space adds is whether a push out of the plane would make the rod leave.
 */
import { type BendAnswer, bendAnswer } from '../bend/bend-answer.ts';
import { type BendRequest, loadingOf } from '../bend/bend-request.ts';
import { makeWorkspace } from '../bend/equilibrium.ts';
import { followLoad } from '../bend/follow.ts';
import { factorBlocks } from '../numerics/factor-blocks.ts';
import { assembleInSpace } from './equilibrium-in-space.ts';
import { buildSpaceMesh, type SpaceMesh } from './mesh-in-space.ts';
import type { SpaceAnswer } from './space-answer.ts';
import { clampTurn, type SpaceRequest, spaceLoadingOf, spaceTables } from './space-request.ts';
import { makeSpaceState, placeState } from './state.ts';

const none = 1e-12;

/** The same request in the planar engine's words; undefined where it leaves the plane. */
export function inPlane(request: Omit<SpaceRequest, 'rod'> & { rod: Omit<SpaceRequest['rod'], 'torsion'> }) {
  const { rod, rollRad = 0, guides, reel, load } = request;
  const flat = (angle: number) => Math.abs(Math.sin(angle)) < none;
  const bows = rod.restCurvature ?? [];
  const pushes = [load.tip?.zN ?? 0, ...bows.map(({ sidePerM = 0 }) => sidePerM)];
  const angles = [rollRad, load.line?.pullSideRad ?? 0, ...(guides ?? []).map((guide) => guide.aroundRad)];
  if (reel && reel.offsetM !== 0) angles.push(reel.aroundRad);
  if (pushes.some((push) => push !== 0) || !angles.every(flat)) return undefined;
  return planarWords(request);
}

function planarWords(request: Parameters<typeof inPlane>[0]): BendRequest {
  const { rod, rollRad = 0, guides, reel, load, buttAngleRad, masses } = request;
  const upright = Math.cos(rollRad) > 0 ? 1 : -1;
  const over = (aroundRad: number) => upright * Math.cos(aroundRad) < 0;
  const pull = load.line && { ...load.line };
  // a pull turned by half a turn to the side points the other way
  const turned = pull && Math.cos(pull.pullSideRad ?? 0) < 0 ? Math.PI : 0;
  const side = guides?.[0] && over(guides[0].aroundRad);
  return {
    rod: {
      ...rod,
      restCurvature: rod.restCurvature?.map(({ fromTipM, perM }) => ({ fromTipM, perM: upright * perM })),
    },
    buttAngleRad,
    masses,
    guides: guides?.map(({ fromTipM, ringHeightM, aroundRad }) => ({
      fromTipM,
      ringHeightM,
      side: over(aroundRad) ? 'over' : 'under',
    })),
    // the planar engine counts the reel's offset to the side of the tip-top
    reel: reel && {
      alongM: reel.alongM,
      offsetM: over(reel.aroundRad) === side ? reel.offsetM : -reel.offsetM,
    },
    load: {
      line: pull && { tensionN: pull.tensionN, pullAngleRad: pull.pullAngleRad + turned },
      tip: load.tip && { xN: load.tip.xN, yN: load.tip.yN },
    },
  };
}

/** Bends in the plane, then asks the rod in space whether it would stay there. */
export function bendStayingInPlane(
  request: SpaceRequest,
  planar: BendRequest,
  options: { resolution: number },
): SpaceAnswer {
  const rings = (planar.guides ?? []).map((guide) => guide.fromTipM);
  const mesh = buildSpaceMesh(spaceTables(request.rod), rings, planar.masses ?? [], options);
  // roll is in the planar words already
  const upright: SpaceMesh = { ...mesh, restTurn: mesh.restTurn.map((turn) => uprightOf(request) * turn) };
  const work = makeWorkspace(upright);
  const loading = loadingOf(planar);
  const followed = followLoad(upright, loading, planar.buttAngleRad, work);
  const answer = bendAnswer(planar, { mesh: upright, loading, work }, followed);
  return {
    ...flatInSpace(answer),
    stable: staysInPlane(request, mesh, work.theta, followed.factor),
  };
}

/** A plane bend in the words of space: it neither leaves the plane nor twists. */
export function flatInSpace(answer: BendAnswer) {
  return {
    ...answer,
    points: answer.points.map((point) => ({ ...point, zM: 0, sideCurvaturePerM: 0, twistRad: 0 })),
    rings: answer.rings.map((ring) => ({ ...ring, zM: 0 })),
    gripTorqueNm: 0,
  };
}

function uprightOf({ rollRad = 0 }: SpaceRequest): number {
  return Math.cos(rollRad) > 0 ? 1 : -1;
}

function staysInPlane(request: SpaceRequest, mesh: SpaceMesh, theta: Float64Array, factor: number): boolean {
  const loading = spaceLoadingOf(request);
  const state = makeSpaceState(mesh);
  theta.forEach((angle, j) => {
    state.q.set(clampTurn(angle, request.rollRad ?? 0), 4 * j);
  });
  placeState(mesh, loading.line, state);
  assembleInSpace(mesh, loading, factor, state);
  return factorBlocks(state.hessian) === 0;
}
