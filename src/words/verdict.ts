/** Whether the marks at hand are any better than the start, and what could still be had; in plain sentences. */
import type { RuledReading } from '../engine/layout/rule-reading.ts';
import type { LadderWriter } from './ladder-writer.ts';
import { worstInWords } from './worst.ts';

export interface VerdictParts {
  ours: RuledReading;
  /** `arithmetic rule`. */
  startName: string;
  start: RuledReading | undefined;
  /** Whether our marks are the start's own. */
  atStart: boolean;
  /** The start stands in a kept-free zone or too near another guide. */
  startBroken: boolean;
  best: RuledReading | undefined;
  /** Best with the other rule for intervals. */
  otherRule: RuledReading | undefined;
  intervals: 'growing' | 'free';
}
export interface Verdict {
  start: string;
  judgement: string;
  /** What the other rule for intervals would change. */
  otherRule: string;
}

/** Loads at which the rod finds no steady bend, or only one that it snaps into; empty where all is well. */
export function unsteadyInWords({ loads }: RuledReading, writer: LadderWriter): string {
  return loads
    .map(({ status }, load) => {
      if (status === 'converged') return '';
      const name = writer.loads[load];
      return status === 'branch-lost'
        ? `At ${name} the rod gives way and snaps into the bend shown.`
        : `At ${name} no steady bend was found. That load does not count.`;
    })
    .filter(Boolean)
    .join(' ');
}

/** Differences smaller than this are none on the bench. */
const asGood = 1.1;
const same = 1.02;

export function verdictInWords(parts: VerdictParts, writer: LadderWriter): Verdict {
  const { start, atStart, startName } = parts;
  const startWorst = start ? worstInWords(start, writer) : undefined;
  return {
    start: atStart
      ? `These are the start's marks (${startName}).`
      : startWorst
        ? `Start (${startName}): ${startWorst}.`
        : '',
    judgement: judgement(parts, writer),
    otherRule: otherRuleInWords(parts, writer),
  };
}

function judgement(parts: VerdictParts, writer: LadderWriter): string {
  const { ours, start, best, atStart, startBroken } = parts;
  if (start && best && !startBroken && start.worst <= asGood * best.worst) {
    if (atStart) return 'Your start is as good as any on this blank.';
    if (ours.worst > asGood * best.worst) {
      return 'Your start is as good as any on this blank, and better than these marks.';
    }
    return 'Your start is as good as any on this blank. So are these marks.';
  }
  const possible = best && ours.worst > asGood * best.worst ? worstInWords(best, writer) : undefined;
  const better = possible ? `Placed for this blank, the worst would be ${possible}.` : '';
  if (atStart || !start) return better;
  return [comparison(ours.worst / start.worst, startBroken), better].filter(Boolean).join(' ');
}

function comparison(ratio: number, startBroken: boolean): string {
  const kept = startBroken ? ' The start puts a guide on a ferrule or too close to another.' : '';
  if (ratio < 1 / asGood) return `These marks are better than the start.${kept}`;
  if (ratio < 1 / same) return `These marks are a little better than the start.${kept}`;
  if (ratio <= same) return `These marks and the start are equally good.${kept}`;
  return `These marks are worse than the start.${kept}`;
}

function otherRuleInWords({ best, otherRule, intervals }: VerdictParts, writer: LadderWriter): string {
  if (!best || !otherRule) return '';
  const worst = worstInWords(otherRule, writer);
  if (intervals === 'free') {
    return otherRule.worst <= same * best.worst
      ? 'Growing intervals would cost nothing.'
      : `With growing intervals the worst would be ${worst}.`;
  }
  if (otherRule.worst > best.worst / same) return 'Spacing that may also shrink would gain nothing.';
  return `If spacing may also shrink toward the butt, the worst drops to ${worst}.`;
}
