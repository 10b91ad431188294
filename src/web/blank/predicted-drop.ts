import type { Material } from '../../engine/bench/bench.ts';
import type { DiameterRow } from '../../engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../../engine/bench/estimate.ts';
import { type BlankTables, freeRod } from '../../engine/bench/free-rod.ts';
import { bend } from '../../engine/bend/bend.ts';
import { standardGravity } from '../../engine/units/gravity.ts';

export interface LevelLoad {
  clampFromTipM: number;
  massKg: number;
}

/** Elements enough to choose a weight by, not to measure by. */
const roughly = { resolution: 60 };

/** The blank as it is best known: from its fit, or before that from its diameters. */
export function tablesOf(
  fitted: BlankTables | undefined,
  profile: readonly DiameterRow[],
  material: Material,
): BlankTables | undefined {
  if (fitted) return fitted;
  return profile.length > 0 ? estimateFromDiameters(profile, material) : undefined;
}

/** How far the tip hangs below the level line through the clamp; a weight it cannot carry drops it all the way. */
export function predictedTipDrop(tables: BlankTables, { clampFromTipM, massKg }: LevelLoad): number {
  const { status, points } = bend(
    {
      rod: freeRod(tables, clampFromTipM),
      buttAngleRad: 0,
      load: { tip: { xN: 0, yN: -massKg * standardGravity } },
    },
    roughly,
  );
  return status === 'converged' ? -points[0].yM : clampFromTipM;
}
