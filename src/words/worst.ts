/** The worst reading of a layout in the bench's words. */
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import type { WorstPlace } from '../engine/layout/worst.ts';
import { formatDegrees, formatGrams } from '../engine/units/format-quantity.ts';

export interface WorstWording {
  /** A gap as a rule reads it. */
  gap: (lengthM: number) => string;
  /** The ladder's weights. */
  loadsKg: readonly number[];
}

/** `guide 7 at 510 g: line angle 17.2°, limit 15°`; undefined where nothing was read. */
export function worstInWords(reading: RuledReading, wording: WorstWording): string | undefined {
  const { worstAt } = reading;
  if (worstAt.index < 0 || worstAt.load < 0) return undefined;
  const load = formatGrams(wording.loadsKg[worstAt.load], 0);
  return `${placeInWords(worstAt)} at ${load}: ${valueInWords(reading, worstAt, wording)}`;
}

/** A span is named by the two rings at its ends; guides are counted from 1 at the tip. */
export function placeInWords({ metric, index }: Pick<WorstPlace, 'metric' | 'index'>): string {
  if (metric === 'lineAngle') return `guide ${index}`;
  return index === 0 ? 'tip-top to guide 1' : `guide ${index} to guide ${index + 1}`;
}

/** `15°`, `12.5°`. */
export function shortDegrees(angleRad: number): string {
  return formatDegrees(angleRad).replace('.0°', '°');
}

/** Gap as a rule reads it, extra bend as a share of the blank's own bend there. */
function valueInWords(reading: RuledReading, worst: WorstPlace, { gap }: WorstWording): string {
  const { metric, load, index, value, limit } = worst;
  if (metric === 'lineAngle') {
    return `line angle ${formatDegrees(value)}, limit ${shortDegrees(limit)}`;
  }
  const { ruleGapM, ownBendPerM } = reading.loads[load].ruled[index];
  if (metric === 'gap') return `gap ${gap(ruleGapM)}, limit there ${gap(ruleGapM - value + limit)}`;
  const share = (bendPerM: number) => `${((100 * bendPerM) / ownBendPerM).toFixed(1)} %`;
  if (!(ownBendPerM > 0)) return 'extra bend where the blank itself does not bend';
  return `the line adds ${share(value)} to the blank’s own bend, limit there ${share(limit)}`;
}
