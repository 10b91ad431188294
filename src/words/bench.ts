/** The Layout sheet's numbers in the bench's words. Lengths come written in the shop's units. */

import type { Stop } from '../engine/layout/guide-moves.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import type { WorstWording } from './worst.ts';

export { shortDegrees } from './criteria.ts';
export { worstInWords } from './worst.ts';

/** How this shop writes things. */
export interface Wording extends WorstWording {
  system: UnitSystem;
  /** To the tape's tick: `22 1⁄8 in`. */
  length(lengthM: number): string;
  /** Names of the ladder's loads: `204 g`. */
  loads: readonly string[];
}

/** Where one guide stands: from the tip, and from its neighbours. */
export function guideInWords(fromTipM: readonly number[], guide: number, wording: Wording): string {
  const interval = fromTipM[guide] - (fromTipM[guide - 1] ?? 0);
  const neighbour = guide === 0 ? 'the tip-top' : `guide ${guide}`;
  const from = `${wording.length(fromTipM[guide])} from the tip`;
  if (guide === 0) return `guide 1, ${from}`;
  return `guide ${guide + 1}, ${from}, ${wording.length(interval)} from ${neighbour}`;
}

/** Why a guide did not go further. */
export function stopInWords(stop: Stop, wording: Wording, joints: readonly string[]): string {
  switch (stop.by) {
    case 'pin':
      return 'This guide is pinned. Unpin it to move it.';
    case 'neighbour':
      return `Stops at guide ${stop.guide + 1}: rings keep ${wording.length(0.05)} apart, and feet clear of each other.`;
    case 'ferrule': {
      const { fromTipM, toTipM } = stop.zone;
      const zone = `${wording.length(fromTipM)} to ${wording.length(toTipM)}`;
      return `Stops at the ferrule ${joints[stop.joint] ?? ''}: kept free from ${zone}. Once more, or further, steps over it.`;
    }
    case 'end':
      return stop.end === 'tip' ? 'Stops short of the tip-top.' : 'Stops at the front of the grip.';
  }
}
