import type { FitSolved } from '../engine/stiffness/request.ts';
import type { Writer } from './writer.ts';

/** Tilts smaller than this are within what a level shows anyway [rad]. */
const noticeableTiltRad = 0.0035;

/** The clamp's tilt of one set-up, with what it did to the tip: `The clamp was 0.5° low (1 in at the tip). Corrected.` */
export function tiltWords(tiltRad: number, freeLengthM: number, writer: Writer): string {
  if (Math.abs(tiltRad) < noticeableTiltRad) return 'The clamp was level.';
  const tip = writer.tick(Math.abs(Math.sin(tiltRad)) * freeLengthM);
  const way = tiltRad > 0 ? 'high' : 'low';
  return `The clamp was ${writer.lineAngle(Math.abs(tiltRad))} ${way} (${tip} at the tip). Corrected.`;
}

/** Of all set-ups: `The clamps were off by 0.3°, 0°, -0.4°; corrected.` */
export function clampsWords(tiltRad: readonly number[], writer: Writer): string {
  const noticed = tiltRad.map((tilt) => (Math.abs(tilt) < noticeableTiltRad ? 0 : tilt));
  if (noticed.every((tilt) => tilt === 0)) return 'The clamps were level.';
  return `The clamps were off by ${noticed.map(writer.lineAngle).join(', ')}; corrected.`;
}

/** How well the readings agree with the blank that was found. */
export function agreementWords({ residualRmsM }: FitSolved, writer: Writer): string {
  const within = writer.fine(residualRmsM);
  if (residualRmsM < 0.0025) return `Your readings agree within ${within}. Good.`;
  if (residualRmsM < 0.006)
    return `Your readings agree within ${within}. With care, ${writer.fine(0.001)} to ${writer.fine(0.002)} is usual.`;
  return `Look for a slipped clamp, a misread tape or swapped weights. Your readings disagree by ${within}.`;
}

/** Fewer readings than these leave much to be gained by the longer protocol. */
const fewReadings = 12;

/** Half the band's width along most of the blank. */
export function typicalBandPercent({ stiffness }: FitSolved): number {
  const halves = stiffness
    .map(({ lowNm2, highNm2 }) => Math.sqrt(highNm2 / lowNm2) - 1)
    .sort((a, b) => a - b);
  return Math.round(halves[Math.floor(halves.length / 2)] * 100);
}

/** How sure the stiffness is, over the length that bends; pictures of one stand tell as much as a long protocol. */
export function surenessWords(solved: FitSolved, readings: number, pictures = 0): string {
  const known = `Stiffness is known to ±${typicalBandPercent(solved)} % along most of the blank`;
  if (readings >= fewReadings || pictures > 1) return `${known}.`;
  return `${known}. That is enough for a first layout. Readings says whether more would move a mark.`;
}
