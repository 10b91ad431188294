/**
 * Swings counted by hand beside what is predicted. f = n/t; a stopwatch pressed by hand is off by some tenths of a
 * second over both ends, σ_t = 0.2 s (a judgement, no source), so that ±f = 1.96·f·σ_t/t. A count is off by whole
 * swings or not at all: that is no ± but a possible reason, looked for when count and prediction disagree.
 */
import { stopwatchSigmaS } from '../stiffness/swing-data.ts';
import type { SwingMode } from './power.ts';

export interface SwingCount {
  counted: number;
  seconds: number;
}
interface CountedHz {
  hz: number;
  plusMinusHz: number;
}

export function countedHz({ counted, seconds }: SwingCount): CountedHz {
  const hz = counted / seconds;
  return { hz, plusMinusHz: (1.96 * hz * stopwatchSigmaS) / seconds };
}

/** The larger way from the likeliest value to the end of its range; undefined without readings. */
export function plusMinusHz({ hz, range }: SwingMode): number | undefined {
  return range && Math.max(range.high - hz, hz - range.low);
}
