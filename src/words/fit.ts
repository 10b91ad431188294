import type { FitSolved } from '../engine/stiffness/request.ts';
import { formatDegrees, formatLength } from '../engine/units/format-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';

/** Tilts smaller than this are within what a level shows anyway [rad]. */
const noticeableTiltRad = 0.0035;

/**
 * The clamp's tilt of one set-up, in words, with what it did to the tip: `pointed 0.8° up, which lifts the tip
 * by 1 3/8 in; taken out`.
 */
export function tiltWords(tiltRad: number, freeLengthM: number, system: UnitSystem): string {
  if (Math.abs(tiltRad) < noticeableTiltRad) return 'stood level, as near as can be told';
  const [way, moves] = tiltRad > 0 ? ['up', 'lifts'] : ['down', 'lowers'];
  const tip = formatLength(Math.abs(Math.sin(tiltRad)) * freeLengthM, {
    system,
    decimals: 0,
    denominator: 8,
  });
  return `pointed ${formatDegrees(Math.abs(tiltRad))} ${way}, which ${moves} the tip by ${tip}; this is taken out`;
}

/** How well the readings agree with the blank that was found. */
export function agreementWords({ residualRmsM }: FitSolved): string {
  const mm = (residualRmsM * 1000).toFixed(1);
  if (residualRmsM < 0.0025)
    return `The readings agree with one blank to ${mm} mm (rms), as good as a tape reads.`;
  if (residualRmsM < 0.006)
    return `The readings agree with one blank to ${mm} mm (rms); a careful bench does 1 to 2.`;
  return `The readings disagree with any one blank by ${mm} mm (rms). Look for a slipped clamp, a misread tape or swapped weights.`;
}

/** Fewer readings than these leave much to be gained by the longer protocol. */
const fewReadings = 12;

/** How sure the stiffness is, over the length that bends. */
export function surenessWords({ stiffness }: FitSolved, readings: number): string {
  const halves = stiffness
    .map(({ lowNm2, highNm2 }) => Math.sqrt(highNm2 / lowNm2) - 1)
    .sort((a, b) => a - b);
  const typical = Math.round(halves[Math.floor(halves.length / 2)] * 100);
  const known = `Stiffness is known to ±${typical} % along most of the blank`;
  if (readings >= fewReadings) return `${known}.`;
  return `${known}: enough for a first layout, not yet for thread. The twenty-minute protocol narrows it.`;
}
