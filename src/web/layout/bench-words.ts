/** The Layout sheet's numbers in the bench's words. Lengths come written in the shop's units. */
import type { RuledReading } from '../../engine/layout/rule-reading.ts';
import type { WorstPlace } from '../../engine/layout/worst.ts';
import { fixedDecimals } from '../../engine/units/format-decimal.ts';
import { formatDegrees } from '../../engine/units/format-quantity.ts';
import type { UnitSystem } from '../../engine/units/unit-table.ts';
import type { Stop } from './guide-moves.ts';

/** How this shop writes things. */
export interface Wording {
  system: UnitSystem;
  /** To the tape's tick: `22 1⁄8 in`. */
  length(lengthM: number): string;
  /** A gap as a rule reads it. */
  gap(lengthM: number): string;
  /** Names of the ladder's loads: `204 g`. */
  loads: readonly string[];
}

/** `guide 7 at 510 g: line angle 17.2°, limit 15°`; undefined where nothing was read. */
export function worstInWords(reading: RuledReading, wording: Wording): string | undefined {
  const { worstAt } = reading;
  if (worstAt.index < 0 || worstAt.load < 0) return undefined;
  return `${placeInWords(worstAt)} at ${wording.loads[worstAt.load]}: ${valueInWords(reading, worstAt, wording)}`;
}

/** A span is named by the two rings at its ends. */
export function placeInWords({ metric, index }: Pick<WorstPlace, 'metric' | 'index'>): string {
  if (metric === 'lineAngle') return `guide ${index}`;
  return index === 0 ? 'tip-top to guide 1' : `guide ${index} to guide ${index + 1}`;
}

function valueInWords(reading: RuledReading, worst: WorstPlace, wording: Wording): string {
  const { metric, load, index, value, limit } = worst;
  if (metric === 'lineAngle') return `line angle ${formatDegrees(value)}, limit ${shortDegrees(limit)}`;
  const ruled = reading.loads[load].ruled[index];
  if (metric === 'gap') {
    const limitByRule = ruled.ruleGapM - value + limit;
    return `gap ${wording.gap(ruled.ruleGapM)}, limit there ${wording.gap(limitByRule)}`;
  }
  const share = (bendPerM: number) => shareInWords(bendPerM, ruled.ownBendPerM);
  return `the line adds ${share(value)} to the blank’s own bend, limit there ${share(limit)}`;
}

/** Extra bend as a share of the blank's own bend in the span. */
export function shareInWords(extraPerM: number, ownPerM: number): string {
  if (!(ownPerM > 0)) return '–';
  const percent = (100 * extraPerM) / ownPerM;
  return `${percent < 9.95 ? fixedDecimals(percent, 1) : Math.round(percent)} %`;
}

/** `15°`, `12.5°`. */
export function shortDegrees(angleRad: number): string {
  return formatDegrees(angleRad).replace('.0°', '°');
}

/** Where one guide stands: from the tip, and from its neighbours. */
export function guideInWords(fromTipM: readonly number[], guide: number, wording: Wording): string {
  const interval = fromTipM[guide] - (fromTipM[guide - 1] ?? 0);
  const neighbour = guide === 0 ? 'the tip-top' : `guide ${guide}`;
  const from = `${wording.length(fromTipM[guide])} from the tip`;
  if (guide === 0) return `guide 1, ${from}`;
  return `guide ${guide + 1}, ${from}, ${wording.length(interval)} from ${neighbour}`;
}

/** Why a guide did not go further. */
export function stopInWords(stop: Stop, wording: Wording, joints: readonly string[]): string {
  switch (stop.by) {
    case 'pin':
      return 'This guide is pinned. Unpin it to move it.';
    case 'neighbour':
      return `Stops at guide ${stop.guide + 1}: rings keep ${wording.length(0.05)} apart, and feet clear of each other.`;
    case 'ferrule': {
      const { fromTipM, toTipM } = stop.zone;
      const zone = `${wording.length(fromTipM)} to ${wording.length(toTipM)}`;
      return `Stops at the ferrule ${joints[stop.joint] ?? ''}: kept free from ${zone}. Once more, or further, steps over it.`;
    }
    case 'end':
      return stop.end === 'tip' ? 'Stops short of the tip-top.' : 'Stops at the front of the grip.';
  }
}
