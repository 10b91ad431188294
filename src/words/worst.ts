/** The worst reading of a layout in the bench's words. */
import { criterionOf } from '../engine/layout/criteria.ts';
import type { RuledReading, RuledSpan } from '../engine/layout/rule-reading.ts';
import { formatGrams } from '../engine/units/format-quantity.ts';
import { criterionWords, type GapWords, placeInWords } from './criteria.ts';

export interface WorstWording {
  /** A gap as a rule reads it. */
  gap: GapWords;
  /** The ladder's weights. */
  loadsKg: readonly number[];
}

/** `guide 7 at 510 g: line angle 17.2°, limit 15°`; undefined where nothing was read. */
export function worstInWords(reading: RuledReading, wording: WorstWording): string | undefined {
  const { worstAt } = reading;
  if (worstAt.index < 0 || worstAt.load < 0) return undefined;
  const load = formatGrams(wording.loadsKg[worstAt.load], 0);
  const { metric, index } = worstAt;
  const ofSpan = criterionOf(metric).at === 'span';
  const span = ofSpan ? reading.loads[worstAt.load].ruled[index] : noSpan;
  return `${placeInWords(worstAt)} at ${load}: ${criterionWords[metric].besideLimit(worstAt, span, wording.gap)}`;
}

/** What is read in a ring is said without one. */
const noSpan: RuledSpan = { ruleGapM: 0, ownBendPerM: 0 };
