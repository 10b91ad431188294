import { type GuideField, placeOnTape } from '../../../engine/layout/guide-moves.ts';
import type { UnitSystem } from '../../../engine/units/unit-table.ts';
import { keptTape } from '../../../words/tape.ts';

/** A layout's marks on the ticks that the record keeps, clear of ferrules as before; a mark that stands is left alone. */
export function marksOnTape(field: GuideField, fromTipM: readonly number[], system: UnitSystem): number[] {
  const tape = keptTape(system);
  const pinned = fromTipM.map(() => false);
  return fromTipM.map((at, guide) =>
    Math.abs(at - field.fromTipM[guide]) < 1e-6
      ? at
      : placeOnTape({ ...field, pinned, fromTipM }, guide, at, tape).fromTipM,
  );
}
