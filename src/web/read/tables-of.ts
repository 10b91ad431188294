import type { DiameterRow } from '../../engine/bench/diameter-profile.ts';
import { estimateFromDiameters } from '../../engine/bench/estimate.ts';
import type { BlankTables } from '../../engine/bench/free-rod.ts';
import type { Material } from '../../engine/bench/materials.ts';

/** The blank as it is best known: from its fit, or before that from its diameters. */
export function tablesOf(
  fitted: BlankTables | undefined,
  profile: readonly DiameterRow[],
  material: Material,
): BlankTables | undefined {
  if (fitted) return fitted;
  return profile.length > 0 ? estimateFromDiameters(profile, material) : undefined;
}
