import { type AssembledBlank, locateMark } from '../engine/bench/assemble.ts';
import type { Tape } from '../engine/layout/guide-moves.ts';
import { formatGrams, formatLength } from '../engine/units/format-quantity.ts';
import { formatOnTape, roundToTape, type TapeStep } from '../engine/units/tape-step.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import type { QuantityValue } from '../record/schema.ts';
import { guideInWords, type Wording } from './bench.ts';

/** Guides are dragged and shown to this tick; Marks rounds them to the builder's own tape. */
const dragStep: Record<UnitSystem, TapeStep> = { inch: '1/16 in', mm: '1 mm' };
/** Marks are kept to the finest tick there is, so that what is shown is what is kept. */
const keptStep: Record<UnitSystem, TapeStep> = { inch: '1/32 in', mm: '1 mm' };

export function wordingOf(system: UnitSystem, loadsKg: readonly number[]): Wording {
  return {
    system,
    length: (lengthM) => formatOnTape(lengthM, dragStep[system]),
    gap: (lengthM) => formatLength(lengthM, { system, denominator: 32, decimals: 1 }),
    loadsKg,
    loads: loadsKg.map((kg) => formatGrams(kg, 0)),
  };
}

export function dragTape(system: UnitSystem): Tape {
  return tapeOf(dragStep[system], system === 'mm' ? 0.001 : 0.0254 / 16);
}

export function keptTape(system: UnitSystem): Tape {
  return tapeOf(keptStep[system], system === 'mm' ? 0.001 : 0.0254 / 32);
}

function tapeOf(step: TapeStep, stepM: number): Tape {
  return { stepM, snap: (at) => roundToTape(at, step) };
}

/** A mark as the record keeps it: on the finest tick, written as the builder would write it. */
export function keptMark(fromTipM: number, system: UnitSystem): QuantityValue {
  const step = keptStep[system];
  return { si: roundToTape(fromTipM, step), text: formatOnTape(fromTipM, step).replace('⁄', '/') };
}

/** `22 1⁄8` without its unit, where the unit stands elsewhere. */
export function shortLength(lengthM: number, system: UnitSystem): string {
  return formatOnTape(lengthM, dragStep[system]).replace(/ (in|mm)$/, '');
}

/** How far a mark may move each way, in ticks no finer than the slack is worth: `-3⁄8 … +1⁄4`. */
export function slackInWords(towardsTipM: number, towardsButtM: number, system: UnitSystem): string {
  const step = system === 'mm' ? 0.001 : 0.0254 / 8;
  const down = (lengthM: number) => Math.floor(lengthM / step + 1e-9) * step;
  return `−${shortLength(down(towardsTipM), system)} … +${shortLength(down(towardsButtM), system)}`;
}

/** `±1 3⁄8`, up to the next tick of the slack; nothing where a mark is given or its ± not known. */
export function plusMinusInWords(plusMinusM: number | undefined, system: UnitSystem): string {
  if (plusMinusM === undefined) return '';
  const step = system === 'mm' ? 0.001 : 0.0254 / 8;
  return `±${shortLength(Math.ceil(plusMinusM / step - 1e-9) * step, system)}`;
}

/** Where a guide stands, from the tip, its neighbour and the two ends of its own section. */
export function placeInFull(
  blank: AssembledBlank,
  fromTipM: readonly number[],
  guide: number,
  wording: Wording,
): string {
  const words = guideInWords(fromTipM, guide, wording);
  const mark = locateMark(blank, fromTipM[guide]);
  if (mark.onSection === 'none') return `${words}; in the gap of a spigot`;
  const { name } = blank.sections[mark.onSection];
  const ends = `${wording.length(mark.fromOwnTipM)} from its tip end, ${wording.length(mark.fromOwnButtM)} from its butt end`;
  return `${words}; on ${name}: ${ends}`;
}

/** A place on the bent rod, for a pencil mark on the wall. */
export function flagInWords(
  flag: { fromTipM: number; outM: number; upM: number; dropM?: number },
  system: UnitSystem,
): string {
  const show = (lengthM: number) => formatLength(lengthM, { system, denominator: 8, decimals: 0 });
  const at = flag.fromTipM < 5e-4 ? 'tip' : `${show(flag.fromTipM)} from the tip`;
  const level = flag.upM < 0 ? 'below' : 'above';
  const place = `${show(flag.outM)} out from the grip’s front, ${show(Math.abs(flag.upM))} ${level} it`;
  if (flag.dropM === undefined) return `${at}: ${place}`;
  const way = flag.dropM < 0 ? 'above' : 'below';
  return `${at}: ${place}; ${show(Math.abs(flag.dropM))} ${way} where it hangs without the weight`;
}
