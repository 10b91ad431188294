/** The worst reading of a layout in the bench's words. */
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import type { WorstPlace } from '../engine/layout/worst.ts';
import type { LadderWriter } from './ladder-writer.ts';

/** `guide 7 at 510 g, line angle 17.2° of 15°`; undefined where nothing was read. */
export function worstInWords(reading: RuledReading, writer: LadderWriter): string | undefined {
  const { worstAt } = reading;
  if (worstAt.index < 0 || worstAt.load < 0) return undefined;
  return `${placeInWords(worstAt)} at ${writer.loads[worstAt.load]}, ${valueInWords(reading, worstAt, writer)}`;
}

/** A span is named by the two rings at its ends; guides are counted from 1 at the tip. */
export function placeInWords({ metric, index }: Pick<WorstPlace, 'metric' | 'index'>): string {
  return metric === 'lineAngle' ? `guide ${index}` : spanInWords(index);
}

/** `between guides 2 and 3`. */
export function spanInWords(span: number): string {
  return span === 0 ? 'between tip-top and guide 1' : `between guides ${span} and ${span + 1}`;
}

/** Beside its limit: the gap as a rule reads it, the bend added as a share of the blank's own bend there. */
function valueInWords(reading: RuledReading, worst: WorstPlace, writer: LadderWriter): string {
  const { metric, load, index, value, limit } = worst;
  if (metric === 'lineAngle') return `line angle ${writer.lineAngle(value)} of ${writer.lineAngle(limit)}`;
  const { ruleGapM, ownBendPerM } = reading.loads[load].ruled[index];
  if (metric === 'gap') return `gap ${writer.fine(ruleGapM)} of ${writer.fine(ruleGapM - value + limit)}`;
  if (!(ownBendPerM > 0)) return 'bend added by the line where the blank itself is straight';
  return `bend added by the line ${shareInWords(value, ownBendPerM)} of ${shareInWords(limit, ownBendPerM)}`;
}

/** Bend added by the line as a share of the blank's own bend in the span. */
export function shareInWords(addedPerM: number, ownPerM: number): string {
  if (!(ownPerM > 0)) return '–';
  return `${((100 * addedPerM) / ownPerM).toFixed(1)} %`;
}
