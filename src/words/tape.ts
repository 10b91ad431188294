/** Marks on the shop's tape: as they are dragged, and as the record keeps them. */
import type { Tape } from '../engine/layout/guide-moves.ts';
import { formatOnTape, roundToTape, type TapeStep, tickM } from '../engine/units/tape-step.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import type { QuantityValue } from '../record/schema.ts';

/** Guides are dragged and shown to this tick; Marks rounds them to the builder's own tape. */
const dragStep: Record<UnitSystem, TapeStep> = { inch: '1/16 in', mm: '1 mm' };
/** Marks are kept to the finest tick there is, so that what is shown is what is kept. */
const keptStep: Record<UnitSystem, TapeStep> = { inch: '1/32 in', mm: '1 mm' };

export function dragTape(system: UnitSystem): Tape {
  return tapeOf(dragStep[system]);
}

export function keptTape(system: UnitSystem): Tape {
  return tapeOf(keptStep[system]);
}

function tapeOf(step: TapeStep): Tape {
  return { stepM: tickM(step), snap: (at) => roundToTape(at, step) };
}

/** A mark as the record keeps it: on the finest tick, written as the builder would write it. */
export function keptMark(fromTipM: number, system: UnitSystem): QuantityValue {
  const step = keptStep[system];
  return { si: roundToTape(fromTipM, step), text: formatOnTape(fromTipM, step).replace('⁄', '/') };
}

/** How far round the blank, as the record keeps it: to the degree. */
export function keptTurn(fromTopRad: number): QuantityValue {
  return { si: fromTopRad, text: `${Math.round((fromTopRad * 180) / Math.PI)}°` };
}
