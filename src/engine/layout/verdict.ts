/** In plain words: is the start as good as any layout, and what has the placing gained? */
import type { LadderReading } from './ladder.ts';

export interface LayoutVerdict {
  /** The start's worst ratio is within a tenth of the answer's. */
  startIsAsGood: boolean;
  /** Share by which the worst ratio falls from the start to the answer; 0 where it does not. */
  gain: number;
  text: string;
}

const asGoodWithin = 1.1;

export function layoutVerdict(
  answer: LadderReading,
  start: LadderReading,
  startBreaks: boolean,
): LayoutVerdict {
  const gain = start.worst > 0 ? Math.max(0, 1 - answer.worst / start.worst) : 0;
  const startIsAsGood = !startBreaks && start.worst <= asGoodWithin * answer.worst;
  return { startIsAsGood, gain, text: textOf(answer, start, startBreaks, gain) };
}

function textOf(answer: LadderReading, start: LadderReading, startBreaks: boolean, gain: number): string {
  const percent = (share: number) => `${Math.round(100 * share)} %`;
  if (startBreaks) {
    const price = gain > 0 ? `${percent(gain)} lower` : `${percent(answer.worst / start.worst - 1)} higher`;
    return `the start breaks a rule asked for (a kept-free zone, feet, growing intervals or a held mark); this layout keeps them all, its worst reading ${price}`;
  }
  if (start.worst <= answer.worst) return 'the start is as good as any layout on this blank: keep it';
  if (start.worst <= asGoodWithin * answer.worst) {
    return `the start is already within ${percent(start.worst / answer.worst - 1)} of the best that can be had on this blank: as good as any for the bench`;
  }
  return `on this blank the worst reading falls by ${percent(gain)} from the start to this layout`;
}
