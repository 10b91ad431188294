/** What a turned section says, in the bench's words: bow and stiffness difference, each with its 95 % ±. */
import type { RotationSolved } from '../engine/rotation/request.ts';
import type { TurnedSection } from '../engine/rotation/turned-section.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatDegrees } from '../engine/units/format-quantity.ts';

const both = 1.96;

/** `Natural bow: the tip leans by 4.1 mm ±0.3 mm towards 283° ±5°.` */
export function bowInWords({ bow, significant }: RotationSolved, held: TurnedSection['held']): string {
  const size = `${millimetres(bow.amplitudeM)} ±${millimetres(both * bow.sigmaM)}`;
  if (!significant.bow) {
    const most = millimetres(bow.amplitudeM + both * bow.sigmaM);
    return `Natural bow: not significant. What was read, ${size}, can be chance; a bow up to about ${most} may still be there.`;
  }
  const what = held === 'span' ? 'the middle stands out' : 'the tip leans';
  return `Natural bow: ${what} by ${size} towards ${place(bow.directionRad, bow.directionSigmaRad)}.`;
}

/** `Stiffness difference: 6.0 % ±0.4 %, softest at 126° and 306° ±4°.` */
export function stiffnessInWords({ stiffnessDifference, significant }: RotationSolved): string {
  const { fraction, sigma, softRad, softSigmaRad } = stiffnessDifference;
  const size = `${percent(fraction)} ±${percent(both * sigma)}`;
  if (!significant.stiffness) {
    const most = percent(fraction + both * sigma);
    return `Stiffness difference: not significant. What was read, ${size}, can be chance; up to about ${most} may still be there.`;
  }
  // rounded before it is halved, so that 179.9° and 0.1° read alike
  const soft = Math.round((softRad * 180) / Math.PI) % 180;
  return `Stiffness difference: ${size} between the softest and the stiffest way; softest with ${soft}° or ${soft + 180}° down, ±${formatDegrees(both * softSigmaRad, 0)}.`;
}

export const chanceWords =
  '± holds the truth 95 times in 100. “Not significant” is said where a section without it would read as much more often than once in 100.';

/** In [0°, 360°), as the section is numbered round. */
export function degrees(angleRad: number): string {
  const whole = Math.round((angleRad * 180) / Math.PI);
  return `${((whole % 360) + 360) % 360}°`;
}

function place(angleRad: number, sigmaRad: number): string {
  return `${degrees(angleRad)} ±${formatDegrees(both * sigmaRad, 0)}`;
}

function millimetres(lengthM: number): string {
  return `${fixedDecimals(lengthM * 1000, lengthM < 0.01 ? 2 : 1)} mm`;
}

function percent(share: number): string {
  return `${fixedDecimals(100 * share, 1)} %`;
}
