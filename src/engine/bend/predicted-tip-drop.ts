import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { standardGravity } from '../units/gravity.ts';
import { bend } from './bend.ts';

export interface LevelLoad {
  clampFromTipM: number;
  massKg: number;
}

/** Elements enough to choose a weight by, not to measure by. */
const roughly = { resolution: 60 };

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
