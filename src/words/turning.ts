/** What a turned section says: bow and stiffness difference, each with its 95 % ±. */
import type { RotationSolved } from '../engine/rotation/request.ts';
import type { TurnedSection } from '../engine/rotation/turned-section.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import type { Writer } from './writer.ts';

const both = 1.96;

/** `Natural bow: the tip leans 0.161 in ±0.012 in toward 283° ±5°.` */
export function bowInWords(
  { bow, significant }: RotationSolved,
  held: TurnedSection['held'],
  w: Writer,
): string {
  if (!significant.bow) return `No bow found (less than ${w.calliper(bow.amplitudeM + both * bow.sigmaM)}).`;
  const size = `${w.calliper(bow.amplitudeM)} ±${w.calliper(both * bow.sigmaM)}`;
  const what = held === 'span' ? 'the middle stands out' : 'the tip leans';
  const place = `${degrees(bow.directionRad)} ±${plusMinus(bow.directionSigmaRad)}`;
  return `Natural bow: ${what} ${size} toward ${place}.`;
}

/** `Stiffness difference: 6.0 % ±0.4 %, softest with 126° or 306° down, ±4°.` */
export function stiffnessInWords({ stiffnessDifference, significant }: RotationSolved): string {
  const { fraction, sigma, softRad, softSigmaRad } = stiffnessDifference;
  if (!significant.stiffness) return `No spine found (less than ${percent(fraction + both * sigma)}).`;
  // rounded before it is halved, so that 179.9° and 0.1° read alike
  const soft = Math.round((softRad * 180) / Math.PI) % 180;
  return `Stiffness difference: ${percent(fraction)} ±${percent(both * sigma)}, softest with ${soft}° or ${soft + 180}° down, ±${plusMinus(softSigmaRad)}.`;
}

export const chanceWords =
  '± holds the truth 19 times in 20. "Found" means: a section without it could show this by chance less than once in 100.';

/** In [0°, 360°), as the section is numbered round. */
export function degrees(angleRad: number): string {
  const whole = Math.round((angleRad * 180) / Math.PI);
  return `${((whole % 360) + 360) % 360}°`;
}

function plusMinus(sigmaRad: number): string {
  return `${fixedDecimals((both * sigmaRad * 180) / Math.PI, 0)}°`;
}

function percent(share: number): string {
  return `${fixedDecimals(100 * share, 1)} %`;
}
