import { type BlankTables, freeRod } from '../../src/engine/bench/free-rod.ts';
import { defaultLadder, defaultLimits } from '../../src/engine/layout/layout-defaults.ts';

/** Five invented guides under a simulated blank that is held 30 cm from its butt, at so many of its usual loads. */
export function fiveGuidesOn(tables: BlankTables, lengthM: number, loads: number) {
  const rod = freeRod(tables, lengthM - 0.3);
  return {
    rod,
    buttAngleRad: Math.PI / 4,
    reel: { alongM: -0.2, offsetM: 0.05 },
    guides: { count: 5, ringHeightsM: [0.004, 0.005, 0.006, 0.008, 0.012], side: 'under' as const },
    tipTop: { ringHeightM: 0.004 },
    ladder: (defaultLadder(rod) ?? []).slice(0, loads),
    limits: defaultLimits(rod.lengthM),
    firstFromTipM: 0.16,
    strippingFromTipM: 0.7 * lengthM,
  };
}
