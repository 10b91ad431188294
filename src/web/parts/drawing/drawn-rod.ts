import { piecewiseLinear } from '../../../engine/numerics/piecewise-linear.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
import { worstBriefly } from '../../../words/worst.ts';
import type { SheetModel } from '../../read/sheet-model.ts';
import type { DrawnRod } from './bend-view.ts';

/** Grids a builder can count: 100 mm, or 4 in with every foot heavier. */
const grids: Record<UnitSystem, DrawnRod['grid']> = {
  inch: { stepM: 4 * 0.0254, heavyEvery: 3 },
  mm: { stepM: 0.1, heavyEvery: 5 },
};
export const gridWords: Record<UnitSystem, string> = { inch: 'grid 4 in', mm: 'grid 100 mm' };

/** What the drawing of the bent rod needs of one build. */
export function drawnRod(model: SheetModel, writer: LadderWriter): DrawnRod {
  const { choices, ladder, diameters, loads } = model;
  return {
    buttAngleRad: choices.buttAngleRad,
    handleM: model.handle.gripFrontFromButtM,
    reel: ladder.ladder.reel,
    side: choices.side,
    reelSide: choices.spiral ? 'over' : choices.side,
    outside: piecewiseLinear(
      diameters.map(({ fromTipM }) => fromTipM),
      diameters.map(({ outsideM }) => outsideM),
    ),
    limitRad: model.limits.lineAngleRad,
    angle: writer.lineAngle,
    worst: (load) => worstBriefly(load, writer),
    gap: writer.fine,
    loadNames: writer.loads,
    pullAngleRad: loads.ladder.map(({ pullAngleRad }) => pullAngleRad),
    loadBy: choices.loadBy,
    grid: grids[writer.units],
  };
}
