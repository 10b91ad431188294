/** Bare blank beside the finished rod, in words; both ends where the stiffness of the wraps decides. */
import type { BareAndFinished, FinishEffects } from '../engine/flow/finish-effects.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { bare } from './places.ts';
import type { Writer } from './writer.ts';

export interface FinishedRow {
  name: string;
  /** `34 1⁄8 in`. */
  bare: string;
  /** `33 3⁄4 to 34 1⁄4 in`. */
  finished: string;
}

export function addedInWords({ addedKg: { guides, thread, finish } }: FinishEffects, w: Writer): string {
  return `Guides add ${w.mass(guides)}, thread ${w.mass(thread)}, finish ${w.mass(finish)}. How much wraps stiffen is known as a range only: from a soft sleeve to every foot bonded to the blank.`;
}

export function finishedRows({ firstHz, tipDropM, hungKg, worst }: FinishEffects, w: Writer): FinishedRow[] {
  const percent = (ratio: number) => fixedDecimals(100 * ratio, 0);
  const inch = w.units === 'inch' ? 'in' : 'mm';
  return [
    ...(firstHz ? [row('first frequency', firstHz, (hz) => fixedDecimals(hz, 2), 'Hz')] : []),
    row(`tip drop under ${w.load(hungKg)}, level`, tipDropM, (dropM) => bare(w.tick(dropM)), inch),
    row('worst of the marks, of its limit', worst, percent, '%'),
  ];
}

function row(
  name: string,
  { bare: blank, loose, bonded }: BareAndFinished,
  write: (value: number) => string,
  unit: string,
): FinishedRow {
  const [low, high] = [loose, bonded].sort((a, b) => a - b).map(write);
  return {
    name,
    bare: `${write(blank)} ${unit}`,
    finished: `${low === high ? low : `${low} to ${high}`} ${unit}`,
  };
}
