/** The worst reading of a layout in the bench's words. */
import { criterionOf } from '../engine/layout/criteria.ts';
import type { RuledLoad, RuledReading, RuledSpan } from '../engine/layout/rule-reading.ts';
import { criterionWords, placeInWords } from './criteria.ts';
import type { LadderWriter } from './ladder-writer.ts';
import type { Writer } from './writer.ts';

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

/** In a lens three lines fit: `17.2°`, `limit 15°`, `guide 7`; `0.095`, `bend added, limit 0.037 1/m`, its span. */
export function worstBriefly({ worstAt, ruled }: Pick<RuledLoad, 'worstAt' | 'ruled'>, writer: Writer) {
  const { metric, index, value, limit } = worstAt;
  const { figure, besideLimit, seen, short } = criterionWords[metric];
  const place = placeInWords(worstAt);
  if (criterionOf(metric).at === 'ring') {
    return { value: figure(value, writer), limit: `limit ${figure(limit, writer)}`, place };
  }
  const [reading, most] = besideLimit(worstAt, ruled[index], writer).split(' of ');
  const what = short.split(',')[0];
  return {
    value: reading.startsWith(seen) ? reading.slice(seen.length + 1) : reading,
    limit: most === undefined ? '' : `${what}, limit ${most}`,
    place,
  };
}

/** What is read in a ring is said without one. */
const noSpan: RuledSpan = { ruleGapM: 0 };
