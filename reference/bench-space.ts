/** The work in space that `npm run bench` times, beside the same rod in its plane. */

import type { LayoutRequest } from '../src/engine/layout/layout-request.ts';
import { seededRandom } from '../src/engine/numerics/seeded-random.ts';
import { bendInSpace, type SpaceRequest } from '../src/engine/space/bend-in-space.ts';
import { followInSpace, followNearbyInSpace } from '../src/engine/space/follow-in-space.ts';
import { buildSpaceMesh } from '../src/engine/space/mesh-in-space.ts';
import { readRingsInSpace, readSpansInSpace } from '../src/engine/space/reading-in-space.ts';
import { spaceLoadingOf, spaceTables } from '../src/engine/space/space-request.ts';
import { makeSpaceState } from '../src/engine/space/state.ts';
import { layoutOfTwelve, tenRings } from './bench-work.ts';

/** On top at the reel, under from the fourth guide on. */
const spiral = (index: number, count: number) => [Math.PI, 2.1, 1.05, 0][Math.min(3, count - 1 - index)];

const torsion = tenRings.rod.stiffness.map(({ fromTipM, EINm2 }) => ({ fromTipM, GJNm2: 0.3 * EINm2 }));

/** The ten rings of `tenRings` as a spiral, pulled 15° sideways. */
export const tenRingsInSpace: SpaceRequest = {
  ...tenRings,
  rod: { ...tenRings.rod, torsion },
  guides: tenRings.guides?.map(({ fromTipM, ringHeightM }, i, all) => ({
    fromTipM,
    ringHeightM,
    aroundRad: spiral(i, all.length),
  })),
  reel: tenRings.reel && { ...tenRings.reel, aroundRad: Math.PI },
  load: {
    ...tenRings.load,
    line: tenRings.load.line && { ...tenRings.load.line, pullSideRad: Math.PI / 12 },
  },
};

export function bendInSpaceOnce(resolution: number): () => unknown {
  return () => bendInSpace(tenRingsInSpace, { resolution });
}

/** A guide moved by up to 4 mm: mesh, bend and readings anew, from the bend at hand. */
export function moveGuideInSpace(resolution: number): () => unknown {
  const tables = spaceTables(tenRingsInSpace.rod);
  const guides = (tenRingsInSpace.guides ?? []).map((guide) => guide.fromTipM);
  const masses = tenRingsInSpace.masses ?? [];
  const loading = spaceLoadingOf(tenRingsInSpace);
  const first = buildSpaceMesh(tables, guides, masses, { resolution });
  const state = makeSpaceState(first);
  followInSpace(first, loading, state);
  const random = seededRandom(5);
  return () => {
    const moved = [...guides];
    moved[1 + Math.floor(random() * (guides.length - 1))] += 0.008 * (random() - 0.5);
    const mesh = buildSpaceMesh(tables, moved, masses, {
      resolution,
      elementsPerPart: first.elementsPerPart,
    });
    if (!followNearbyInSpace(mesh, loading, state).converged)
      throw new Error('the moved guide lost its bend');
    return [readRingsInSpace(loading.line!, state), readSpansInSpace(mesh, loading.line!, state)];
  };
}

export function spiralOfTwelve(): LayoutRequest {
  const plane = layoutOfTwelve();
  const { count } = plane.guides;
  return {
    ...plane,
    rod: { ...plane.rod, torsion },
    guides: { ...plane.guides, aroundRad: Array.from({ length: count }, (_, i) => spiral(i, count)) },
    reel: { ...plane.reel, aroundRad: Math.PI },
  };
}
