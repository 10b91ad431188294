import { criterionOf } from '../../../engine/layout/criteria.ts';
import type { RuledLoad } from '../../../engine/layout/rule-reading.ts';
import { piecewiseLinear } from '../../../engine/numerics/piecewise-linear.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { criterionWords, placeInWords } from '../../../words/criteria.ts';
import type { LadderWriter } from '../../../words/ladder-writer.ts';
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
    angle: writer.angle,
    worst: (load) => worstReading(load, writer),
    gap: writer.fine,
    loadNames: writer.loads,
    pullAngleRad: loads.ladder.map(({ pullAngleRad }) => pullAngleRad),
    loadBy: choices.loadBy,
    grid: grids[writer.units],
  };
}

/** `17.2°`, `limit 15°`, `guide 7`. */
function worstReading({ worstAt, ruled }: RuledLoad, writer: LadderWriter) {
  const { metric, index, value, limit } = worstAt;
  const words = criterionWords[metric];
  const place = placeInWords(worstAt);
  if (criterionOf(metric).at === 'ring') {
    return { value: words.figure(value, writer), limit: `limit ${words.figure(limit, writer)}`, place };
  }
  const [reading, most] = words.besideLimit(worstAt, ruled[index], writer).split(' of ');
  return { value: reading, limit: most === undefined ? '' : `limit ${most}`, place };
}
