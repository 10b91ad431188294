/** Is the start as good as any layout, and what has the placing gained? */

export interface LayoutVerdict {
  /** The start's worst ratio is within a tenth of the answer's. */
  startIsAsGood: boolean;
  /** Share by which the worst ratio falls from the start to the answer; 0 where it does not. */
  gain: number;
  /** The start breaks a rule that was asked for: a kept-free zone, feet, growing intervals or a held mark. */
  startBreaks: boolean;
  /** The answer's worst ratio over the start's; 1 where the start reads nothing. */
  worstToStart: number;
  /** Why the start is the answer where other marks might be better: nothing was read, or too little to tell. */
  startKept?: 'unread' | LeadAsked;
}

/** Of the blanks that fit the readings: where other marks lead, and where they lose more than counts as little. */
export interface LeadCounts {
  better: number;
  worse: number;
  of: number;
}
export interface LeadAsked extends LeadCounts {
  /** Of 100 blanks, on how many other marks would have to lead; more where the clamp was in one place only. */
  wanted: number;
  oneHold: boolean;
}

const asGoodWithin = 1.1;

export function layoutVerdict(worst: number, startWorst: number, startBreaks: boolean): LayoutVerdict {
  const worstToStart = startWorst > 0 ? worst / startWorst : 1;
  return {
    startIsAsGood: !startBreaks && startWorst <= asGoodWithin * worst,
    gain: Math.max(0, 1 - worstToStart),
    startBreaks,
    worstToStart,
  };
}
