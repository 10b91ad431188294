/** How each criterion of a layout is said: names, figures as the bench reads them, and its limit. */
import { criterionOf, type Metric } from '../engine/layout/criteria.ts';
import type { RuledSpan } from '../engine/layout/rule-reading.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatDegrees, formatLength, formatMm } from '../engine/units/format-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';

/** A gap as a rule reads it. */
export type GapWords = (lengthM: number) => string;

export interface CriterionWords {
  name: string;
  /** Over a narrow column. */
  short: string;
  /** Over a column of readings as the bench sees them, with the unit of its lengths. */
  column(unit: string): string;
  /** Over its drawing. */
  title: string;
  /** Of a limit that is a plain number. */
  unit?: string;
  /** The value by itself: `14.9°`, `10.3 mm`, `0.046 1/m`. */
  figure(value: number): string;
  limit(value: number, system: UnitSystem): string;
  /** One reading as the bench sees it; `span` is the one it is of, or the one before its ring. */
  reading(value: number, span: RuledSpan, gap: GapWords): string;
  /** `line angle 17.2°, limit 15°`. */
  besideLimit(worst: { value: number; limit: number }, span: RuledSpan, gap: GapWords): string;
}

const share = (bendPerM: number, ownPerM: number) => `${fixedDecimals((100 * bendPerM) / ownPerM, 1)} %`;

export const criterionWords: Readonly<Record<Metric, CriterionWords>> = {
  lineAngle: {
    name: 'line angle',
    short: 'angle',
    column: () => 'line angle',
    title: 'line angle',
    figure: (value) => formatDegrees(value),
    limit: (value) => shortDegrees(value),
    reading: (value) => formatDegrees(value),
    besideLimit: ({ value, limit }) => `line angle ${formatDegrees(value)}, limit ${shortDegrees(limit)}`,
  },
  gap: {
    name: 'gap',
    short: 'gap',
    column: (unit) => `gap by rule, ${unit}`,
    title: 'gap beyond the rings’ height',
    figure: (value) => formatMm(value),
    limit: (value, system) => formatLength(value, { system, denominator: 32, decimals: 0 }),
    reading: (_, { ruleGapM }, gap) => gap(ruleGapM),
    besideLimit: ({ value, limit }, { ruleGapM }, gap) =>
      `gap ${gap(ruleGapM)}, limit there ${gap(ruleGapM - value + limit)}`,
  },
  extraBend: {
    name: 'extra bend',
    short: 'adds',
    column: () => 'extra bend',
    title: 'extra bend by the line',
    figure: (value) => `${fixedDecimals(value, 3)} 1/m`,
    limit: (value) => `${value.toFixed(3)} 1/m`,
    reading: (value, { ownBendPerM }) => (ownBendPerM > 0 ? share(value, ownBendPerM) : '–'),
    besideLimit: ({ value, limit }, { ownBendPerM }) =>
      ownBendPerM > 0
        ? `the line adds ${share(value, ownBendPerM)} to the blank’s own bend, limit there ${share(limit, ownBendPerM)}`
        : 'extra bend where the blank itself does not bend',
  },
};

/** A span is named by the two rings at its ends; guides are counted from 1 at the tip. */
export function placeInWords({ metric, index }: { metric: Metric; index: number }): string {
  if (criterionOf(metric).at === 'ring') return `guide ${index}`;
  return index === 0 ? 'tip-top to guide 1' : `guide ${index} to guide ${index + 1}`;
}

/** `15°`, `12.5°`. */
export function shortDegrees(angleRad: number): string {
  return formatDegrees(angleRad).replace('.0°', '°');
}
