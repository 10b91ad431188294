import { formatLength, formatMm } from '../engine/units/format-quantity.ts';
import type { TapeStep } from '../engine/units/tape-step.ts';

/** How far rounding moves a mark, in the tape's own unit: `1/32 in` or `0.4 mm`; undefined where it is next to nothing. */
export function roundedWords(lengthM: number, step: TapeStep): string | undefined {
  const farM = Math.abs(lengthM);
  if (step === '1 mm') return farM > 5e-5 ? formatMm(farM) : undefined;
  // Half a 64th of an inch.
  return farM > 0.0254 / 128 ? formatLength(farM, { system: 'inch', denominator: 64 }) : undefined;
}
