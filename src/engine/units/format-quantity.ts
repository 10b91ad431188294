import { fixedDecimals, trimZeros } from './format-decimal.ts';
import { formatInches, type InchDenominator } from './format-inches.ts';
import type { UnitSystem } from './unit-table.ts';

/**
 * Values for the reader, in the shop's system. Display only: no stored value passes through here and back.
 */
interface LengthFormat {
  system: UnitSystem;
  /** Inch shop: the tape's division. */
  denominator?: InchDenominator;
  /** Millimetre shop: decimals; 1 where left out. */
  decimals?: number;
  feet?: boolean;
}

/** `12 3⁄16 in` or `309.6 mm`. */
export function formatLength(lengthM: number, { system, decimals, ...inch }: LengthFormat): string {
  return system === 'inch' ? formatInches(lengthM, inch).text : formatMm(lengthM, decimals);
}

/** `309.6 mm`. */
export function formatMm(lengthM: number, decimals = 1): string {
  return `${fixedDecimals(lengthM * 1000, decimals)} mm`;
}

/** `72 g`, `0.25 g`; grams in both systems, as the scale shows. */
export function formatGrams(massKg: number, decimals = 2): string {
  return `${trimZeros(massKg * 1000, decimals)} g`;
}

/** `2.5 oz` (avoirdupois). */
export function formatOunces(massKg: number, decimals = 2): string {
  return `${trimZeros(massKg / 0.028349523125, decimals)} oz`;
}

/** `14.9°`. */
export function formatDegrees(angleRad: number, decimals = 1): string {
  return `${fixedDecimals((angleRad * 180) / Math.PI, decimals)}°`;
}
