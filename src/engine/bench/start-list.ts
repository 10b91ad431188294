/**
 * Starting layouts: the arithmetic rule, and lists as people type or paste them.
 *
 * The rule (common practice, no source): with n guides, first mark t and stripping guide at D_n,
 * D_k = k·t + d·k(k−1)/2, d = (D_n − n·t) / (n(n−1)/2): each interval is d longer than the one before.
 */

import { type Finding, findingsOf } from '../finding.ts';
import { readQuantity } from '../units/read-quantity.ts';
import { type Unit, type UnitSystem, unitTable } from '../units/unit-table.ts';
import type { BenchKinds } from './bench-kinds.ts';

type StationList = { ok: true; fromTipM: number[] } | { ok: false; findings: Finding[] };

const found = findingsOf<BenchKinds>();

interface ArithmeticRule {
  count: number;
  firstFromTipM: number;
  strippingFromTipM: number;
}

/** Stations from the tip down; their findings carry the record's paths. */
export function arithmeticRule({ count, firstFromTipM, strippingFromTipM }: ArithmeticRule): StationList {
  if (!Number.isInteger(count) || count < 2 || count > 30) {
    return { ok: false, findings: [found('layout/-/startCount', 'bench/rule-count', { count })] };
  }
  const ends = { firstM: firstFromTipM, strippingM: strippingFromTipM };
  if (!(firstFromTipM > 0 && firstFromTipM < strippingFromTipM)) {
    return { ok: false, findings: [found('layout/-/startFirst', 'bench/rule-first', ends)] };
  }
  const growthM = (strippingFromTipM - count * firstFromTipM) / ((count * (count - 1)) / 2);
  const fromTipM = Array.from({ length: count }, (_, index) => {
    const k = index + 1;
    return k * firstFromTipM + (growthM * k * (k - 1)) / 2;
  });
  fromTipM[count - 1] = strippingFromTipM;
  if (firstFromTipM + (count - 1) * growthM <= 0 || fromTipM[0] >= fromTipM[1]) {
    const values = { count, ...ends };
    return { ok: false, findings: [found('layout/-/startFirst', 'bench/rule-overshoots', values)] };
  }
  return { ok: true, fromTipM };
}

export interface ListOptions {
  system: UnitSystem;
  /** Which end the numbers count from: the tip, or the blank's butt end. */
  from: 'tip' | 'butt';
  /** The assembled length, which turns butt into tip distances. */
  blankLengthM: number;
  path?: string;
}

/**
 * Stations from a list as typed or pasted: one after the other on lines, with commas, semicolons, tabs or
 * spaces between; inches, fractions or mm, with or without their unit; a first column that only numbers the
 * guides, and the tip-top's 0, are left out. The order is kept, save that a list counted from the butt (or
 * written from the butt up) is turned round to run from the tip.
 */
export function readStationList(text: string, options: ListOptions): StationList {
  const path = options.path ?? 'layout/-/startText';
  const cells = withoutNumbering(text.split(/\r?\n/).map(splitEntries)).flat();
  if (cells.length === 0) {
    return { ok: false, findings: [found(path, 'bench/list-empty', {})] };
  }
  const read = cells.map((cell) => readQuantity(cell, { dimension: 'length', system: options.system, path }));
  const findings = read.flatMap((one) => (one.ok ? [] : [one.finding]));
  if (findings.length > 0) return { ok: false, findings };
  const values = read.flatMap((one) => (one.ok ? [one.si] : []));
  const fromTip = options.from === 'tip' ? values : values.map((value) => options.blankLengthM - value);
  const marks = fromTip.filter((station) => Math.abs(station) > 1e-9);
  const falling = marks.length > 1 && marks.every((mark, i) => i === 0 || mark < marks[i - 1]);
  return { ok: true, fromTipM: falling ? marks.reverse() : marks };
}

/** Words of units, the longest first, as a field takes them. */
const spelled = (units: readonly Unit[]) =>
  units
    .flatMap(({ spellings }) => spellings.filter((word) => /^[a-z]+$/.test(word)))
    .flatMap((word) => (word.length > 1 ? [`${word}s`, word] : [word]))
    .sort((a, b) => b.length - a.length)
    .join('|');
const anyUnit = `(?:${spelled(unitTable.length)})\\b\\.?`;
const feet = `(?:'(?!')|(?:${spelled(unitTable.length.filter(({ symbol }) => symbol === 'ft'))})\\b\\.?)`;
const number = '(?:\\d+[ -]+(?=[\\d.]+/))?(?:\\d+(?:\\.\\d+)?|\\.\\d+)(?:/\\d+)?';
/** `4 1/2`, `4-1/2"`, `4' 7 1/2"`, `2 feet 3 inches`, `31.5 cm`: one entry each; all else is kept whole, to be refused by name. */
const entryPattern = new RegExp(
  `(?:\\d+\\s*${feet}\\s*-?\\s*(?=\\d|\\.\\d)(?!${number}\\s*${feet}))?${number}\\s*(?:"|''|'|${anyUnit})?|[^\\s\\d;,]+`,
  'gi',
);
/** What people write before a mark: `Guide 3:`, `3)`, `#3`, `stripping guide`. */
const labelPattern =
  /^\s*(?:(?:[a-z][a-z -]*|#)\s*\d+\s*[).:]\s*|\d+\s*[).:]\s+|[a-z][a-z -]*:?\s*(?=\d|$))/i;

function splitEntries(line: string): string[] {
  const ascii = line
    .replace(/[½¼¾⅐-⅞]/g, (glyph) => ` ${glyph.normalize('NFKC')}`)
    .replace(/⁄/g, '/')
    .replace(/[″“”]/g, '"')
    .replace(/[′‘’]/g, "'")
    .replace(/[–—−]/g, '-');
  const plain = withoutCommas(ascii.replace(labelPattern, ''));
  return plain
    .split(/[;\t|]+/)
    .flatMap((piece) => piece.match(entryPattern) ?? [])
    .map((entry) => entry.trim());
}

/** A comma separates where a space follows, where points mark the decimals, or where commas chain (`4,9,15`). */
function withoutCommas(line: string): string {
  const spaced = line.replace(/,(?=\s|$)/g, ';');
  const separates = /\d\.\d/.test(spaced) || /\d,\d+,\d/.test(spaced);
  return spaced.replace(/,/g, separates ? ';' : '.');
}

/** Drops a first column 1, 2, 3 ... where every line has one. */
function withoutNumbering(lines: string[][]): string[][] {
  const filled = lines.filter((line) => line.length > 0);
  const numbered =
    filled.length > 1 && filled.every((line, index) => line.length === 2 && line[0] === String(index + 1));
  return numbered ? filled.map((line) => line.slice(1)) : filled;
}
