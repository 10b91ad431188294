import { formatInches, type InchDenominator } from './format-inches.ts';
import { formatMm } from './format-quantity.ts';

/** The finest division the builder marks by. */
export type TapeStep = '1 mm' | '1/8 in' | '1/16 in' | '1/32 in';

/** From tick to tick. */
export function tickM(step: TapeStep): number {
  const denominator = tapeDenominator(step);
  return denominator === undefined ? 0.001 : 0.0254 / denominator;
}

/** The nearest tick of the tape. */
export function roundToTape(lengthM: number, step: TapeStep): number {
  const denominator = tapeDenominator(step);
  if (denominator === undefined) return Math.round(lengthM * 1000) / 1000;
  return lengthM - formatInches(lengthM, { denominator }).remainderM;
}

/** `12 3⁄16 in` or `310 mm`, to the tape's tick. */
export function formatOnTape(lengthM: number, step: TapeStep): string {
  const denominator = tapeDenominator(step);
  return denominator === undefined ? formatMm(lengthM, 0) : formatInches(lengthM, { denominator }).text;
}

/** What a tape of these ticks counts in. */
export const systemOfTape = (step: TapeStep) => (step === '1 mm' ? 'mm' : 'inch');

/** Undefined for a millimetre tape. */
export function tapeDenominator(step: TapeStep): InchDenominator | undefined {
  return ({ '1 mm': undefined, '1/8 in': 8, '1/16 in': 16, '1/32 in': 32 } as const)[step];
}
