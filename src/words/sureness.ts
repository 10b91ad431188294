/** How sure a layout is: one sentence, and its ranges. */
import type { MarksSureness, Sureness } from '../engine/sureness/sureness.ts';
import type { Writer } from './writer.ts';

/** `Your readings leave room. On 98 of 100 blanks that fit them, these marks beat the start.` */
export function surenessInWords({ own, better, blanks }: Sureness): string {
  if (!own || own.blanks === 0)
    return `On none of ${blanks} blanks that fit your readings has every load a bend.`;
  if (better && better.of > 0 && 2 * better.count < better.of)
    return `Take more readings before you mark. On only ${better.count} of ${better.of} blanks that fit yours, these marks beat the start.`;
  return better && better.of > 0
    ? `Your readings leave room. On ${better.count} of ${better.of} blanks that fit them, these marks beat the start.`
    : 'Your readings fit more than one blank. How sure says what that changes.';
}

/** Empty where no blank bends. */
export function surenessRangesInWords({ own }: Sureness, writer: Writer): string {
  if (!own || own.blanks === 0) return '';
  const { lineAngleRad: angle } = own;
  const tip = writer.tick(Math.max(...own.tips.map(({ plusMinusM }) => plusMinusM)));
  const lost = own.unbent > 0 ? ` (${own.unbent} more found no bend)` : '';
  return `On 95 of 100 blanks that fit your readings: the largest line angle is ${writer.lineAngle(angle.low)} to ${writer.lineAngle(angle.high)}, ${besideBlankInWords(own, writer)}, the tip within ±${tip}. ${own.blanks} blanks were bent${lost}.`;
}

/** Guides on top: how the line stands to the blank, in place of a gap that is nought. */
function besideBlankInWords({ gapM: gap, intoBlankM: into }: MarksSureness, writer: Writer): string {
  if (!into) return `the largest gap ${writer.fine(gap.low)} to ${writer.fine(gap.high)}`;
  return into.high > 0
    ? `the line goes into the blank by ${writer.fine(Math.max(0, into.low))} to ${writer.fine(into.high)}`
    : 'the line clears the blank';
}
