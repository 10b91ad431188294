/** The worst reading of a layout in the bench's words. */
import { criterionOf } from '../engine/layout/criteria.ts';
import type { RuledReading, RuledSpan } from '../engine/layout/rule-reading.ts';
import { criterionWords, placeInWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';

/** `guide 7 at 510 g, line angle 17.2° of 15°`; undefined where nothing was read. */
export function worstInWords(reading: RuledReading, writer: LadderWriter): string | undefined {
  const { worstAt } = reading;
  if (worstAt.index < 0 || worstAt.load < 0) return undefined;
  const { metric, index } = worstAt;
  const ofSpan = criterionOf(metric).at === 'span';
  const span = ofSpan ? reading.loads[worstAt.load].ruled[index] : noSpan;
  const beside = criterionWords[metric].besideLimit(worstAt, span, writer);
  return `${placeInWords(worstAt)} at ${writer.loads[worstAt.load]}, ${beside}`;
}

/** What is read in a ring is said without one. */
const noSpan: RuledSpan = { ruleGapM: 0 };
