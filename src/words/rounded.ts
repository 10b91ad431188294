import { formatInches } from '../engine/units/format-inches.ts';
import { formatMm } from '../engine/units/format-quantity.ts';
import type { TapeStep } from '../engine/units/tape-step.ts';

/** How far rounding moves a mark, in the tape's own unit; undefined where it is next to nothing. */
export function roundedWords(lengthM: number, step: TapeStep): string | undefined {
  const farM = Math.abs(lengthM);
  if (step === '1 mm') return farM > 5e-5 ? formatMm(farM) : undefined;
  // Half a 64th of an inch.
  return farM > 0.0254 / 128 ? formatInches(farM, { denominator: 64 }).text : undefined;
}
