import { makeLadder } from '../../engine/layout/ladder.ts';
import { smallestIntervalM } from '../../engine/layout/layout-request.ts';
import { makeRatioProbe, ratiosAt } from '../../engine/layout/ratios.ts';
import { type MarkSlack, slackOfMarks } from '../../engine/layout/slack.ts';
import type { SlackTask } from './messages.ts';

/** The worst reading may grow by this much before a mark has moved too far. */
const growth = 1.05;

/** The slack of a layout that the builder made or altered; the engine's own answers bring theirs. */
export function slackOfLayout({ ladder, fromTipM, footM, keepOut }: SlackTask): MarkSlack[] {
  const probe = makeRatioProbe(makeLadder(ladder));
  const halfFootM = footM.map((foot) => foot / 2);
  return slackOfMarks(probe, fromTipM, {
    ceiling: growth * ratiosAt(probe, fromTipM).worst,
    leastIntervalM: halfFootM.slice(1).map((half, i) => Math.max(smallestIntervalM, halfFootM[i] + half)),
    leastFirstM: smallestIntervalM,
    zones: keepOut,
    halfFootM,
  });
}
