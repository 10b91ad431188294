/** How sure a layout is: one sentence, and its ranges. */
import type { Sureness } from '../engine/sureness/sureness.ts';
import type { Writer } from './writer.ts';

/** `Your readings leave room. On 98 of 100 blanks that fit them, these marks beat the start.` */
export function surenessInWords({ own, better, blanks }: Sureness): string {
  if (!own || own.blanks === 0)
    return `On none of ${blanks} blanks that fit your readings has every load a bend.`;
  if (better && better.of > 0 && 2 * better.count < better.of)
    return `Take more readings before you mark. On only ${better.count} of ${better.of} blanks that fit yours, these marks beat the start.`;
  return better && better.of > 0
    ? `Your readings leave room. On ${better.count} of ${better.of} blanks that fit them, these marks beat the start.`
    : 'Your readings fit more than one blank. What that changes stands under How sure.';
}

/** Empty where no blank bends. */
export function surenessRangesInWords({ own }: Sureness, writer: Writer): string {
  if (!own || own.blanks === 0) return '';
  const { lineAngleRad: angle, gapM: gap } = own;
  const tip = writer.tick(Math.max(...own.tips.map(({ plusMinusM }) => plusMinusM)));
  const lost = own.unbent > 0 ? ` (${own.unbent} more found no bend)` : '';
  return `On 95 of 100 blanks that fit your readings: the largest line angle is ${writer.lineAngle(angle.low)} to ${writer.lineAngle(angle.high)}, the largest gap ${writer.fine(gap.low)} to ${writer.fine(gap.high)}, the tip within ±${tip}. ${own.blanks} blanks were bent${lost}.`;
}
