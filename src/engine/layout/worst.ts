/** Which reading of a layout is furthest up its limit, and where. */
import type { RingReading, SpanReading } from '../bend/reading.ts';
import type { LayoutLimits } from './ladder-request.ts';

export type Metric = 'lineAngle' | 'gap' | 'extraBend';
export const metrics: readonly Metric[] = ['lineAngle', 'gap', 'extraBend'];

export interface WorstPlace {
  metric: Metric;
  /** Row of the ladder. */
  load: number;
  /** Ring for a line angle (0 the tip-top), span for the others; -1 where no reading counts. */
  index: number;
  value: number;
  limit: number;
  ratio: number;
}

export interface Readings {
  rings: readonly RingReading[];
  spans: readonly SpanReading[];
}

export function worstOfLoad(
  readings: Readings,
  limits: LayoutLimits,
  load: number,
): Record<Metric, WorstPlace> {
  const { rings, spans } = readings;
  const inner = rings.slice(1, -1).map((ring) => ring.lineAngleRad);
  return {
    lineAngle: worstIn('lineAngle', inner, limits.lineAngleRad, load, 1),
    gap: worstIn(
      'gap',
      spans.map((span) => span.gapM),
      limits.gapM,
      load,
      0,
    ),
    extraBend: worstIn(
      'extraBend',
      spans.map((span) => span.extraBendPerM),
      limits.extraBendPerM,
      load,
      0,
    ),
  };
}

/** The worst of each metric over several loads; none of them: ratios of 0. */
export function worstOfPlaces(loads: readonly Record<Metric, WorstPlace>[]): Record<Metric, WorstPlace> {
  const worst = (metric: Metric) =>
    loads
      .map((of) => of[metric])
      .reduce((most, place) => (place.ratio > most.ratio ? place : most), {
        ...nowhere,
        metric,
      });
  return { lineAngle: worst('lineAngle'), gap: worst('gap'), extraBend: worst('extraBend') };
}

const nowhere = { load: -1, index: -1, value: 0, limit: 0, ratio: -1 };

function worstIn(
  metric: Metric,
  values: readonly number[],
  limit: number,
  load: number,
  first: number,
): WorstPlace {
  let at = -1;
  for (let i = 0; i < values.length; i++) if (at < 0 || values[i] > values[at]) at = i;
  const value = at < 0 ? 0 : values[at];
  return { metric, load, index: at < 0 ? -1 : at + first, value, limit, ratio: value / limit };
}
