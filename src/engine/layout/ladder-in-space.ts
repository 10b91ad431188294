/** A ladder whose rings stand anywhere round the rod, which may be rolled and pulled sideways: bent in space. */
import type { Mesh } from '../bend/mesh.ts';
import { followInSpace, followNearbyInSpace, nudgeInSpace } from '../space/follow-in-space.ts';
import { buildSpaceMesh, type SpaceMesh } from '../space/mesh-in-space.ts';
import { inPlane } from '../space/planar.ts';
import { readRingsInSpace, readSpansInSpace } from '../space/reading-in-space.ts';
import { pullDirection, type SpaceRequest, spaceLoadingOf, spaceTables } from '../space/space-request.ts';
import {
  anglesFromTheSide,
  carryTurns,
  makeSpaceState,
  type SpaceLoading,
  type SpaceState,
} from '../space/state.ts';
import { torsionFromRatio } from '../torsion/torsion-ratio.ts';
import type { Ladder, LadderLoad, LadderRequest } from './ladder-request.ts';
import type { LoadBend } from './load-bend.ts';

type WithoutTorsion = Parameters<typeof inPlane>[0];

/** Throws where the rod has no torsion: the door refuses such a request. */
export function spaceLadder(request: LadderRequest, { resolution }: { resolution: number }): Ladder {
  const torsion = torsionOf(request);
  if (!torsion) throw new Error('a rod that leaves its plane needs torsion');
  const rod = spaceTables({ ...request.rod, torsion });
  const loadings = request.ladder.map((load) => spaceLoadingOf(spaceWords(request, load)));
  return {
    request,
    rod,
    meshFor: (fromTipM, masses, elementsPerPart) =>
      buildSpaceMesh(rod, fromTipM, masses, { resolution, elementsPerPart }),
    bendUnder: (load, mesh) =>
      spaceLoadBend(loadings[load], makeSpaceState(mesh as SpaceMesh), request.buttAngleRad),
  };
}

export function torsionOf({ rod, torsionShare }: Pick<LadderRequest, 'rod' | 'torsionShare'>) {
  return rod.torsion ?? (torsionShare ? torsionFromRatio(rod.stiffness, torsionShare) : undefined);
}

/** Guides at 0: only how high and where round the rod they stand counts here. */
export function spaceWords(
  request: LadderRequest,
  load: LadderLoad,
): WithoutTorsion & Omit<SpaceRequest, 'rod'> {
  const { guides, tipTop, reel, rod, buttAngleRad, rollRad } = request;
  const straight = guides.side === 'over' ? Math.PI : 0;
  const aroundRad = guides.aroundRad ?? guides.ringHeightsM.map(() => straight);
  const rings = [
    { ringHeightM: tipTop.ringHeightM, aroundRad: tipTop.aroundRad ?? aroundRad[0] },
    ...guides.ringHeightsM.map((ringHeightM, i) => ({ ringHeightM, aroundRad: aroundRad[i] })),
  ];
  const { tensionN, pullAngleRad, pullSideRad, tiedN = 0 } = load;
  const [x, y, z] = pullDirection(pullAngleRad, pullSideRad);
  return {
    rod,
    buttAngleRad,
    rollRad,
    guides: rings.map((ring) => ({ ...ring, fromTipM: 0 })),
    reel: { ...reel, aroundRad: reel.aroundRad ?? aroundRad[guides.count - 1] },
    load: {
      line: { tensionN, pullAngleRad, pullSideRad },
      tip: tiedN === 0 ? undefined : { xN: tiedN * x, yN: tiedN * y, zN: pullSideRad ? tiedN * z : 0 },
    },
  };
}

/** The same in the planar ladder's words, where every load leaves the rod in its plane with all rings on one side. */
export function onOneSide(request: LadderRequest): LadderRequest | undefined {
  const { ladder, rollRad = 0, guides } = request;
  if (rollRad !== 0 || ladder.some(({ pullSideRad = 0 }) => pullSideRad !== 0)) return undefined;
  const planar = inPlane(spaceWords(request, ladder[0] ?? noLoad));
  const rings = planar?.guides ?? [];
  if (!planar?.reel || rings.some(({ side }) => side !== rings[0].side)) return undefined;
  return { ...request, guides: { ...guides, side: rings[0].side, aroundRad: undefined }, reel: planar.reel };
}

const noLoad: LadderLoad = { tensionN: 0, pullAngleRad: 0 };

function spaceLoadBend(loading: SpaceLoading, state: SpaceState, buttAngleRad: number): LoadBend {
  const line = loading.line!;
  const follow = (mesh: Mesh) => followInSpace(mesh as SpaceMesh, loading, state).status;
  return {
    follow,
    rebend: (mesh) =>
      followNearbyInSpace(mesh as SpaceMesh, loading, state).converged ? 'converged' : follow(mesh),
    nudge: (mesh) => nudgeInSpace(mesh as SpaceMesh, loading, state),
    carriedTo: (from, to) => {
      const next = makeSpaceState(to as SpaceMesh);
      carryTurns(from, state.q, to, next.q);
      return spaceLoadBend(loading, next, buttAngleRad);
    },
    read: (mesh) => ({
      rings: readRingsInSpace(line, state),
      spans: readSpansInSpace(mesh as SpaceMesh, line, state),
    }),
    shape: () => ({
      xM: state.place.filter((_, i) => i % 3 === 0),
      yM: state.place.filter((_, i) => i % 3 === 1),
      zM: state.place.filter((_, i) => i % 3 === 2),
      angleRad: anglesFromTheSide(state, buttAngleRad),
    }),
  };
}
