/**
 * Reads a length, mass, angle, duration, temperature, volume or density as a person writes it: `4 1/2 in`, `4-1/2"`,
 * `4' 7 1/2"`, `31,5 cm`, `3/64`, `2.5 oz`, `12°`, `72 F`. Arithmetic is exact up to the last step into a double.
 */

import { type Finding, findingsOf } from '../finding.ts';
import { cleanText } from './clean-text.ts';
import type { QuantityKinds, Unread } from './quantity-kinds.ts';
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

type ReadQuantity =
  /** `understood` is shown under the field before it is kept: `4 1/2 in = 114.3 mm`. Grains are easily taken for grams. */
  { ok: true; si: number; understood: string; inGrains: boolean } | { ok: false; finding: Finding };

type Parts = { ok: true; negative: boolean; parts: Part[] } | NotRead;
type NotRead = { ok: false } & Unread;

/**
 * SI value of a typed text: m, kg, rad, s, m³, kg/m³; temperatures in °C.
 * @returns a finding that names the text and how to write it; never throws on any text.
 */
export function readQuantity(typed: string, options: ReadOptions): ReadQuantity {
  const parts = readParts(typed, options);
  if (!parts.ok) return refuse(typed, options, { why: parts.why, part: parts.part, other: parts.other });
  const scale = parts.parts[0].unit.scale ?? 1;
  const sum = parts.parts.map(partFactor).reduce(rationalAdd);
  const signed = parts.negative ? rationalMultiply(sum, rational(-1n)) : sum;
  const { zero } = parts.parts[0].unit;
  const si = rationalToNumber(zero ? rationalAdd(signed, zero) : signed) * scale;
  const inGrains = parts.parts[0].unit.symbol === 'grains';
  return { ok: true, si, understood: showConverted(parts.parts, si, options), inGrains };
}

const longestText = 60;

const found = findingsOf<QuantityKinds>();

function refuse(typed: string, { dimension, path = '' }: ReadOptions, why: Unread): ReadQuantity {
  const shown = typed.length > longestText ? `${typed.slice(0, longestText)}…` : typed;
  return { ok: false, finding: found(path, 'units/not-read', { typed: shown, dimension, ...why }) };
}

function readParts(typed: string, options: ReadOptions): Parts {
  if (typed.length > longestText) return { ok: false, why: 'long' };
  const clean = cleanText(typed);
  if (!clean.ok) return clean;
  if (clean.text === '') return { ok: false, why: 'empty' };
  const signed = /^([-+]?)\s*(.*)$/.exec(clean.text);
  const parts: Part[] = [];
  let rest = signed?.[2] ?? '';
  while (rest !== '') {
    const next = readPart(rest, parts.at(-1)?.unit, options);
    if (!next.ok) return next;
    parts.push(next.part);
    rest = next.rest;
  }
  if (parts.length === 0) return { ok: false, why: 'no-number' };
  return { ok: true, negative: signed?.[1] === '-', parts };
}

/** A mixed number (`4 1/2`, `4-1/2`), a fraction (`5.5/64`) or a decimal, then its unit, then perhaps a dash. */
const partPattern =
  /^(?:(?<whole>\d+)\s*[ -]\s*(?=[\d.]+\/))?(?<numerator>\d+\.?\d*|\.\d+)(?:\/(?<denominator>\d+))?\s*(?<unit>°\s*[cf](?![a-z])|["'°]|fl\.?\s*oz\.?|[a-z]+\/[a-z]+3?|cm3|[a-z]+\.?)?\s*(?:-(?=\s*[\d.]))?\s*/i;

function readPart(
  text: string,
  previous: Unit | undefined,
  options: ReadOptions,
): { ok: true; part: Part; rest: string } | NotRead {
  const match = partPattern.exec(text)?.groups;
  if (!match) return { ok: false, why: 'not-a-number', part: text };
  const number = readNumber(match);
  if (!number.ok) return number;
  const written = bareDegree(match.unit, options) ? undefined : match.unit;
  const word = written ?? impliedUnit(match.denominator !== undefined, previous, options);
  const unit = word === undefined ? undefined : findUnit(options.dimension, word);
  if (!unit) return { ok: false, ...unitTrouble(word, text, options) };
  if (previous && (!mixed.includes(options.dimension) || !isSmaller(unit, previous))) {
    return { ok: false, why: 'order', part: unit.symbol, other: previous.symbol };
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
  match: Record<string, string | undefined>,
): { ok: true; value: Rational; numeral: string } | NotRead {
  const { whole, numerator = '', denominator } = match;
  const top = rationalFromDigits(numerator);
  if (denominator === undefined) return { ok: true, value: top, numeral: numerator.replace(/\.$/, '') };
  const bottom = rational(BigInt(denominator));
  const written = `${numerator}/${denominator}`;
  if (bottom.numerator === 0n) return { ok: false, why: 'zero-below', part: written };
  const part = rationalDivide(top, bottom);
  if (whole === undefined) return { ok: true, value: part, numeral: written };
  if (part.numerator >= part.denominator) {
    return { ok: false, why: 'fraction-over-one', part: written };
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

function unitTrouble(word: string | undefined, text: string, options: ReadOptions): Unread {
  if (word === undefined) return { why: 'no-unit', part: text };
  const others: Dimension[] = ['length', 'mass', 'angle', 'duration', 'temperature', 'volume', 'density'];
  const other = others.find((dimension) => dimension !== options.dimension && findUnit(dimension, word));
  if (other) return { why: 'other-unit', part: word, other };
  return { why: 'unknown-unit', part: word };
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
