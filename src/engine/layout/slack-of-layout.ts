import type { KeepOut } from './kept-free.ts';
import { makeLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { smallestIntervalM } from './layout-request.ts';
import { makeRatioProbe, ratiosAt } from './ratios.ts';
import { type MarkSlack, slackCeiling, slackOfMarks } from './slack.ts';

export interface LaidMarks {
  ladder: LadderRequest;
  fromTipM: readonly number[];
  footM: readonly number[];
  keepOut: readonly KeepOut[];
}

/** The slack of a layout that the builder made or altered; the engine's own answers bring theirs. */
export function slackOfLayout({ ladder, fromTipM, footM, keepOut }: LaidMarks): MarkSlack[] {
  const probe = makeRatioProbe(makeLadder(ladder));
  const halfFootM = footM.map((foot) => foot / 2);
  return slackOfMarks(probe, fromTipM, {
    ceiling: slackCeiling * ratiosAt(probe, fromTipM).worst,
    leastIntervalM: halfFootM.slice(1).map((half, i) => Math.max(smallestIntervalM, halfFootM[i] + half)),
    leastFirstM: smallestIntervalM,
    zones: keepOut,
    halfFootM,
  });
}
