/** How each criterion of a layout is said: names, figures as the bench reads them, and its limit. */
import { criterionOf, type Metric } from '../engine/layout/criteria.ts';
import type { RuledSpan } from '../engine/layout/rule-reading.ts';
import { fixedDecimals } from '../engine/units/format-decimal.ts';
import type { Writer } from './writer.ts';

interface CriterionWords {
  name: string;
  /** Before a reading as the bench sees it. */
  seen: string;
  /** Over a narrow column. */
  short: string;
  /** Over a column of readings as the bench sees them, with the unit of its lengths. */
  column(unit: string): string;
  /** Over its drawing. */
  title: string;
  /** Of the largest, over all guides and loads. */
  most: string;
  /** Numbers of guides are compared by it only where some go over its limit. */
  onlyWhereItDecides?: true;
  /** The value, or its limit, by itself: `14.9°`, `13⁄32 in`, `0.046 1/m`. */
  figure(value: number, writer: Writer): string;
  /** One reading as the bench sees it; `span` is the one it is of, or the one before its ring. */
  reading(value: number, span: RuledSpan, writer: Writer): string;
  /** `line angle 17.2° of 15°`. */
  besideLimit(worst: { value: number; limit: number }, span: RuledSpan, writer: Writer): string;
}

export const criterionWords: Readonly<Record<Metric, CriterionWords>> = {
  lineAngle: {
    name: 'line angle',
    seen: 'line angle',
    short: 'angle',
    column: () => 'line angle',
    title: 'line angle',
    most: 'line turns most',
    figure: (value, w) => w.lineAngle(value),
    reading: (value, _, w) => w.lineAngle(value),
    besideLimit: ({ value, limit }, _, w) => `line angle ${w.lineAngle(value)} of ${w.lineAngle(limit)}`,
  },
  gap: {
    name: 'gap above the ring',
    seen: 'gap by rule',
    short: 'gap',
    column: (unit) => `gap by rule, ${unit}`,
    title: 'gap above the ring',
    most: 'gap above the ring',
    figure: (value, w) => w.fine(value),
    reading: (_, { ruleGapM }, w) => w.fine(ruleGapM),
    besideLimit: ({ value, limit }, { ruleGapM }, w) =>
      `gap by rule ${w.fine(ruleGapM)} of ${w.fine(ruleGapM - value + limit)}`,
  },
  extraBend: {
    name: 'bend added by the line',
    seen: 'bend added by the line',
    short: 'bend added, 1/m',
    column: () => 'bend added, 1/m',
    title: 'bend added by the line',
    most: 'bend added by the line',
    onlyWhereItDecides: true,
    figure: (value) => `${perMetre(value)} 1/m`,
    reading: perMetre,
    besideLimit: ({ value, limit }) => `bend added by the line ${perMetre(value)} of ${perMetre(limit)} 1/m`,
  },
  intoBlank: {
    name: 'line into the blank',
    seen: 'line into the blank',
    short: 'into blank',
    column: (unit) => `line into the blank, ${unit}`,
    title: 'line into the blank',
    most: 'into the blank between rings',
    figure: intoBlank,
    reading: (value, _, w) => intoBlank(value, w),
    besideLimit: ({ value, limit }, _, w) =>
      value > 0 ? `line into the blank ${w.fine(value)} of ${w.fine(limit)}` : 'line clears the blank',
  },
};

/** Negative where the line clears it. */
function intoBlank(value: number, w: Writer): string {
  return value > 0 ? w.fine(value) : 'clear';
}

function perMetre(value: number): string {
  return fixedDecimals(value, 3);
}

/** A span is named by the two rings at its ends; guides are counted from 1 at the tip. */
export function placeInWords({ metric, index }: { metric: Metric; index: number }): string {
  return criterionOf(metric).at === 'ring' ? `guide ${index}` : spanInWords(index);
}

/** `between guides 2 and 3`. */
export function spanInWords(span: number): string {
  return span === 0 ? 'between tip-top and guide 1' : `between guides ${span} and ${span + 1}`;
}
