/**
 * Reads a length, mass, angle, duration, temperature, volume or density as a person writes it: `4 1/2 in`, `4-1/2"`,
 * `4' 7 1/2"`, `31,5 cm`, `3/64`, `2.5 oz`, `12°`, `72 F`. Arithmetic is exact up to the last step into a double.
 */

import { type Finding, said } from '../finding.ts';
import { cleanText } from './clean-text.ts';
import type { Part, ReadOptions } from './quantity-parts.ts';
import {
  type Rational,
  rational,
  rationalAdd,
  rationalDivide,
  rationalFromDigits,
  rationalMultiply,
  rationalToNumber,
} from './rational.ts';
import { showConverted } from './show-converted.ts';
import { bareUnit, type Dimension, findUnit, type Unit } from './unit-table.ts';

export type ReadQuantity =
  /** `understood` is shown under the field before it is kept: `4 1/2 in = 114.3 mm`. */
  { ok: true; si: number; understood: string } | { ok: false; finding: Finding };

type Parts = { ok: true; negative: boolean; parts: Part[] } | { ok: false; reason: string };

/**
 * SI value of a typed text: m, kg, rad, s, m³, kg/m³; temperatures in °C.
 * @returns a finding that names the text and how to write it; never throws on any text.
 */
export function readQuantity(typed: string, options: ReadOptions): ReadQuantity {
  const parts = readParts(typed, options);
  if (!parts.ok) return refuse(typed, options, parts.reason);
  const scale = parts.parts[0].unit.scale ?? 1;
  const sum = parts.parts.map(partFactor).reduce(rationalAdd);
  const signed = parts.negative ? rationalMultiply(sum, rational(-1n)) : sum;
  const { zero } = parts.parts[0].unit;
  const si = rationalToNumber(zero ? rationalAdd(signed, zero) : signed) * scale;
  return { ok: true, si, understood: showConverted(parts.parts, si, options) };
}

const examples: Record<Dimension, string> = {
  length: `4 1/2 in, 4' 7 1/2", 3/64 in, 114 mm or 11.4 cm`,
  mass: '72 g, 0.1 kg, 2.5 oz or 1/4 oz',
  angle: '12°, 45 deg or 0.2 rad',
  duration: '6 h, 45 min or 1 h 30 min',
  temperature: '72 F or 22 C',
  warmer: '18 F or 10 C',
  volume: '12 ml or 1/2 fl oz',
  density: '1.1 g/ml or 9.2 lb/gal',
};
const kinds: Record<Dimension, string> = {
  length: 'a length',
  mass: 'a mass',
  angle: 'an angle',
  duration: 'a duration',
  temperature: 'a temperature',
  warmer: 'a difference of temperatures',
  volume: 'a volume',
  density: 'a density',
};
const longestText = 60;

function refuse(typed: string, options: ReadOptions, reason: string): ReadQuantity {
  const shown = typed.length > longestText ? `${typed.slice(0, longestText)}…` : typed;
  const message = `"${shown}" is not ${kinds[options.dimension]}: ${reason}. Write it like ${examples[options.dimension]}.`;
  return { ok: false, finding: said(options.path ?? '', message) };
}

function readParts(typed: string, options: ReadOptions): Parts {
  if (typed.length > longestText) return { ok: false, reason: 'it is too long' };
  const clean = cleanText(typed);
  if (!clean.ok) return clean;
  if (clean.text === '') return { ok: false, reason: 'nothing is written' };
  const signed = /^([-+]?)\s*(.*)$/.exec(clean.text);
  const parts: Part[] = [];
  let rest = signed?.[2] ?? '';
  while (rest !== '') {
    const next = readPart(rest, parts.at(-1)?.unit, options);
    if (!next.ok) return next;
    parts.push(next.part);
    rest = next.rest;
  }
  if (parts.length === 0) return { ok: false, reason: 'no number is written' };
  return { ok: true, negative: signed?.[1] === '-', parts };
}

/** A mixed number (`4 1/2`, `4-1/2`), a fraction (`5.5/64`) or a decimal, then its unit, then perhaps a dash. */
const partPattern =
  /^(?:(?<whole>\d+)\s*[ -]\s*(?=[\d.]+\/))?(?<numerator>\d+\.?\d*|\.\d+)(?:\/(?<denominator>\d+))?\s*(?<unit>°\s*[cf](?![a-z])|["'°]|fl\.?\s*oz\.?|[a-z]+\/[a-z]+3?|cm3|[a-z]+\.?)?\s*(?:-(?=\s*[\d.]))?\s*/i;

function readPart(
  text: string,
  previous: Unit | undefined,
  options: ReadOptions,
): { ok: true; part: Part; rest: string } | { ok: false; reason: string } {
  const found = partPattern.exec(text)?.groups;
  if (!found) return { ok: false, reason: `"${text}" is no number` };
  const number = readNumber(found);
  if (!number.ok) return number;
  const written = bareDegree(found.unit, options) ? undefined : found.unit;
  const word = written ?? impliedUnit(found.denominator !== undefined, previous, options);
  const unit = word === undefined ? undefined : findUnit(options.dimension, word);
  if (!unit) return { ok: false, reason: unitReason(word, text, options) };
  if (previous && (!mixed.includes(options.dimension) || !isSmaller(unit, previous))) {
    return { ok: false, reason: `${unit.symbol} cannot follow ${previous.symbol}` };
  }
  const rest = text.slice(partPattern.exec(text)?.[0].length);
  return { ok: true, part: { numeral: number.numeral, value: number.value, unit }, rest };
}

/** Written in several units at once. */
const mixed: readonly Dimension[] = ['length', 'mass', 'angle', 'duration'];

/** `22°` of a room is in the shop's own degrees. */
function bareDegree(unit: string | undefined, { dimension }: ReadOptions): boolean {
  return unit === '°' && (dimension === 'temperature' || dimension === 'warmer');
}

function readNumber(
  found: Record<string, string | undefined>,
): { ok: true; value: Rational; numeral: string } | { ok: false; reason: string } {
  const { whole, numerator = '', denominator } = found;
  const top = rationalFromDigits(numerator);
  if (denominator === undefined) return { ok: true, value: top, numeral: numerator.replace(/\.$/, '') };
  const bottom = rational(BigInt(denominator));
  const written = `${numerator}/${denominator}`;
  if (bottom.numerator === 0n) return { ok: false, reason: `${written} divides by zero` };
  const part = rationalDivide(top, bottom);
  if (whole === undefined) return { ok: true, value: part, numeral: written };
  if (part.numerator >= part.denominator) {
    return { ok: false, reason: `after a whole number ${written} should be less than one` };
  }
  return { ok: true, value: rationalAdd(rational(BigInt(whole)), part), numeral: `${whole} ${written}` };
}

/**
 * The unit of a number without one: inches after feet; the shop's unit at the start. A bare fraction of a
 * length is inches in a millimetre shop too, since nobody rules a millimetre in 64ths; the echo says so.
 */
function impliedUnit(
  fraction: boolean,
  previous: Unit | undefined,
  options: ReadOptions,
): string | undefined {
  if (previous) return previous.symbol === 'ft' ? 'in' : undefined;
  if (fraction && options.dimension === 'length') return 'in';
  return bareUnit(options.dimension, options);
}

function unitReason(word: string | undefined, text: string, options: ReadOptions): string {
  if (word === undefined) return `"${text}" has no unit`;
  const others: Dimension[] = ['length', 'mass', 'angle', 'duration', 'temperature', 'volume', 'density'];
  const other = others.find((dimension) => findUnit(dimension, word));
  if (other) return `${word} is a unit of ${other}`;
  return `"${word}" is no unit of ${options.dimension} known here`;
}

/** Parts run from large to small and within one family, so that `7 in 4 ft` or `1 h 2 d` is asked back. */
function isSmaller(unit: Unit, previous: Unit): boolean {
  return (
    (unit.scale ?? 1) === (previous.scale ?? 1) &&
    rationalToNumber(unit.factor) < rationalToNumber(previous.factor)
  );
}

function partFactor(part: Part): Rational {
  return rationalMultiply(part.value, part.unit.factor);
}
