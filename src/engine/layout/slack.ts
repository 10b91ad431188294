/**
 * How far one mark may move by itself, towards the tip and towards the butt, before the worst ratio exceeds a
 * ceiling, or a neighbour or a kept-free zone stops it. That intervals grow does not stop it: a mark slightly
 * off is no worse for that.
 */
import type { KeepOut } from './kept-free.ts';
import { type RatioProbe, ratiosAt } from './ratios.ts';

export interface MarkSlack {
  towardsTip: number;
  towardsButt: number;
}
export interface SlackBounds {
  /** Worst ratio not to be exceeded. */
  ceiling: number;
  leastIntervalM: readonly number[];
  /** Least distance from the tip-top to guide 1. */
  leastFirstM: number;
  zones: readonly KeepOut[];
  halfFootM: readonly number[];
}

export function slackOfMarks(
  probe: RatioProbe,
  fromTipM: readonly number[],
  bounds: SlackBounds,
): MarkSlack[] {
  return fromTipM.map((_, guide) => ({
    towardsTip: slackOf(probe, fromTipM, bounds, guide, -1),
    towardsButt: slackOf(probe, fromTipM, bounds, guide, 1),
  }));
}

/** To a tenth of a millimetre. */
const slackStepM = 1e-4;

function slackOf(
  probe: RatioProbe,
  fromTipM: readonly number[],
  bounds: SlackBounds,
  guide: number,
  direction: 1 | -1,
): number {
  const farthest = roomOf(probe, fromTipM, bounds, guide, direction);
  const excessAt = (moved: number) =>
    ratiosAt(probe, fromTipM.with(guide, fromTipM[guide] + direction * moved)).worst - bounds.ceiling;
  let good = 0;
  let bad = Math.min(farthest, 4e-3);
  while (bad > good && excessAt(bad) <= 0) {
    good = bad;
    bad = Math.min(farthest, 2 * bad);
  }
  while (bad - good > slackStepM) {
    const middle = 0.5 * (good + bad);
    if (excessAt(middle) <= 0) good = middle;
    else bad = middle;
  }
  return good;
}

/** How far the mark could move before a neighbour, a kept-free zone, the tip or the clamp stops it. */
function roomOf(
  probe: RatioProbe,
  fromTipM: readonly number[],
  bounds: SlackBounds,
  guide: number,
  direction: 1 | -1,
): number {
  const { leastIntervalM, leastFirstM, zones, halfFootM } = bounds;
  const here = fromTipM[guide];
  const last = fromTipM.length - 1;
  const clampRoomM = probe.ladder.rod.lengthM - Math.max(halfFootM[guide], 2e-3);
  const stops = zones.flatMap((zone) => {
    const edge = direction > 0 ? zone.fromTipM - halfFootM[guide] : zone.toTipM + halfFootM[guide];
    return direction * (edge - here) > -1e-7 ? [edge] : [];
  });
  if (direction > 0) stops.push(guide === last ? clampRoomM : fromTipM[guide + 1] - leastIntervalM[guide]);
  else stops.push(guide === 0 ? leastFirstM : fromTipM[guide - 1] + leastIntervalM[guide - 1]);
  return Math.max(0, Math.min(...stops.map((stop) => direction * (stop - here))));
}
