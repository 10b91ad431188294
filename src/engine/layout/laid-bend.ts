/** A layout under one load of its ladder as one request: in the plane, and in space where it leaves it. */
import type { BendRequest } from '../bend/bend-request.ts';
import type { PointMass } from '../bend/mesh.ts';
import type { SpaceRequest } from '../space/space-request.ts';
import { onOneSide, spaceWords, torsionOf } from './ladder-in-space.ts';
import type { LadderLoad, LadderRequest } from './ladder-request.ts';

export interface LaidGuides {
  ladder: LadderRequest;
  /** One station per guide, ascending. */
  fromTipM: readonly number[];
}

/** All rings on the side that the guides stand on. */
export function bendRequestOf({ ladder, fromTipM }: LaidGuides, load: LadderLoad): BendRequest {
  const { rod, buttAngleRad, reel, guides, tipTop } = ladder;
  const { tiedN = 0, pullAngleRad, tensionN } = load;
  const heights = [tipTop.ringHeightM, ...guides.ringHeightsM];
  return {
    rod,
    buttAngleRad,
    reel,
    masses: laidMasses({ ladder, fromTipM }),
    guides: [0, ...fromTipM].map((at, i) => ({ fromTipM: at, ringHeightM: heights[i], side: guides.side })),
    load: {
      line: { tensionN, pullAngleRad },
      tip: { xN: tiedN * Math.cos(pullAngleRad), yN: tiedN * Math.sin(pullAngleRad) },
    },
  };
}

export const leavesPlane = (ladder: LadderRequest) => onOneSide(ladder) === undefined;

/** Throws where the torsion is not known. */
export function spaceRequestOf({ ladder, fromTipM }: LaidGuides, load: LadderLoad): SpaceRequest {
  const torsion = torsionOf(ladder);
  if (!torsion) throw new Error('a rod that leaves its plane needs torsion');
  const { guides = [], rod, ...words } = spaceWords(ladder, load);
  return {
    ...words,
    rod: { ...rod, torsion },
    masses: laidMasses({ ladder, fromTipM }),
    guides: guides.map((guide, i) => ({ ...guide, fromTipM: i === 0 ? 0 : fromTipM[i - 1] })),
  };
}

function laidMasses({ ladder: { tipTop, guides }, fromTipM }: LaidGuides): PointMass[] {
  const masses = [tipTop.massKg ?? 0, ...fromTipM.map((_, i) => guides.massesKg?.[i] ?? 0)];
  return [0, ...fromTipM]
    .map((at, i) => ({ fromTipM: at, massKg: masses[i] }))
    .filter(({ massKg }) => massKg > 0);
}
