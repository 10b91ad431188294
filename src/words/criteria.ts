/** How each criterion of a layout is said: names, figures as the bench reads them, and its limit. */
import { criteria, criterionOf, type Metric } from '../engine/layout/criteria.ts';
import type { RuledSpan } from '../engine/layout/rule-reading.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import { formatDegrees, formatLength, formatMm } from '../engine/units/format-quantity.ts';
import type { UnitSystem } from '../engine/units/unit-table.ts';
import { limitFields } from '../record/schema/limit-fields.ts';

/** A gap as a rule reads it. */
export type GapWords = (lengthM: number) => string;

export interface CriterionWords {
  name: string;
  /** Over a narrow column. */
  short: string;
  /** Over a column of readings as the bench sees them, with the unit of its lengths. */
  column(unit: string): string;
  /** Beside the field of its limit, and over its drawing. */
  label: string;
  title: string;
  hint?: string;
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
    label: 'Line angle in a ring',
    title: 'line angle',
    hint: 'Where the line turns sharply it drags and wears the ring. Lower: guides closer where the bend is tight. Builders aim at 10 to 15° (common practice, no source).',
    figure: (value) => formatDegrees(value),
    limit: (value) => shortDegrees(value),
    reading: (value) => formatDegrees(value),
    besideLimit: ({ value, limit }) => `line angle ${formatDegrees(value)}, limit ${shortDegrees(limit)}`,
  },
  gap: {
    name: 'gap',
    short: 'gap',
    column: (unit) => `gap by rule, ${unit}`,
    label: 'Gap beyond the rings’ height',
    title: 'gap beyond the rings’ height',
    hint: 'How far the line may leave the bend between two rings. A rule reads the ring height on top.',
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
    label: 'Extra bend by the line',
    title: 'extra bend by the line',
    unit: '1/m',
    figure: (value) => `${fixedDecimals(value, 3)} 1/m`,
    limit: (value) => value.toFixed(3),
    reading: (value, { ownBendPerM }) => (ownBendPerM > 0 ? share(value, ownBendPerM) : '–'),
    besideLimit: ({ value, limit }, { ownBendPerM }) =>
      ownBendPerM > 0
        ? `the line adds ${share(value, ownBendPerM)} to the blank’s own bend, limit there ${share(limit, ownBendPerM)}`
        : 'extra bend where the blank itself does not bend',
  },
};

/** What History calls the fields of the limits. */
export const limitFieldWords: Record<string, string | [string, string]> = Object.fromEntries(
  criteria.map(({ id }) => {
    const { name, unit } = criterionWords[id];
    const words = `limit of the ${name}`;
    return [limitFields[id].field, unit ? [words, unit] : words];
  }),
);

/** A span is named by the two rings at its ends; guides are counted from 1 at the tip. */
export function placeInWords({ metric, index }: { metric: Metric; index: number }): string {
  if (criterionOf(metric).at === 'ring') return `guide ${index}`;
  return index === 0 ? 'tip-top to guide 1' : `guide ${index} to guide ${index + 1}`;
}

/** `15°`, `12.5°`. */
export function shortDegrees(angleRad: number): string {
  return formatDegrees(angleRad).replace('.0°', '°');
}
