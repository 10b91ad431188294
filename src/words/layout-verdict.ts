import type { LayoutFound } from '../engine/layout/layout.ts';
import type { LayoutVerdict } from '../engine/layout/verdict.ts';
import { unreadInWords } from './lead.ts';

/** Whether the layout is worth its marks. */
export function layoutVerdictWords({
  startIsAsGood,
  gain,
  startBreaks,
  worstToStart,
  startKept,
}: LayoutVerdict): string {
  if (startKept) return startKeptWords[startKept === 'unread' ? 'unread' : 'unsure'];
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  if (startBreaks) {
    const price = gain > 0 ? `${percent(gain)} lower` : `${percent(worstToStart - 1)} higher`;
    return `The start breaks a rule you asked for: a kept-free zone, feet, growing intervals or a held mark. This layout keeps them all; its worst is ${price}.`;
  }
  if (worstToStart >= 1) return 'Keep the start. It is as good as any layout on this blank.';
  if (startIsAsGood) {
    return `Your start is as good as any at the bench: within ${percent(1 / worstToStart - 1)} of the best on this blank.`;
  }
  return `From the start to this layout, the worst drops by ${percent(gain)}.`;
}

const startKeptWords = {
  unread: `Keep the start. ${unreadInWords}`,
  unsure:
    'Keep the start for now. Other marks are worse on too many of the blanks that fit your readings, or by too much.',
} as const;

/** Which loads have no bend of their own; empty where all have one. */
export function lostLoadsWords({
  status,
  lostLoads = [],
}: Pick<LayoutFound, 'status' | 'lostLoads'>): string {
  if (lostLoads.length === 0) return '';
  const loads = `load ${lostLoads.map((load) => load + 1).join(', ')}`;
  return status === 'not-converged'
    ? `No bend was found under ${loads}. It was left out of the placing.`
    : `Under ${loads} the rod snaps into another bend on the way.`;
}
