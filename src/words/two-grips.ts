/** What each of two hands gives, in weights that a builder has lifted. */
import type { TwoGripsAtLoad } from '../engine/flow/two-grips.ts';
import { standardGravity } from '../engine/units/gravity.ts';
import type { LadderWriter } from './ladder-writer.ts';

/** To 10 g: a hand tells no more. */
const asWeight = (forceN: number, writer: LadderWriter) =>
  writer.load(Math.round((100 * Math.abs(forceN)) / standardGravity) / 100);

/** `holds 4.1 kg down` of the lower hand: with a pull at the tip it keeps the butt from rising. */
export function lowerHandInWords({ lowerN }: TwoGripsAtLoad, writer: LadderWriter): string {
  return `${asWeight(lowerN, writer)} ${lowerN < 0 ? 'down' : 'up'}`;
}

export function upperHandInWords({ upperN, upperAlongN }: TwoGripsAtLoad, writer: LadderWriter): string {
  return asWeight(Math.hypot(upperN, upperAlongN), writer);
}

/** The heaviest load first. */
export function twoGripsInWords(loads: readonly TwoGripsAtLoad[], writer: LadderWriter): string {
  const last = loads.length - 1;
  const at = loads[last];
  const verb = at.lowerN < 0 ? 'holds the butt down with' : 'lifts the butt with';
  return `At ${writer.loads[last]} the lower hand ${verb} ${asWeight(at.lowerN, writer)}. The upper hand carries ${upperHandInWords(at, writer)}.`;
}
