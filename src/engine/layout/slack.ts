/**
 * How far one mark may move by itself, towards the tip and towards the butt, before the worst ratio exceeds a
 * ceiling, or a neighbour or a kept-free zone stops it. That intervals grow does not stop it: a mark slightly
 * off is no worse for that.
 */
import { bracketedRoot } from '../numerics/bracketed-root.ts';
import type { KeepOut } from './kept-free.ts';
import { type RatioProbe, ratiosAt } from './ratios.ts';

export interface MarkSlack {
  towardsTip: number;
  towardsButt: number;
}
/** How far above the layout's worst ratio a mark's slack may take it. */
export const slackCeiling = 1.05;

interface SlackBounds {
  /** Worst ratio not to be exceeded: `slackCeiling` times the layout's. */
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

function slackOf(
  probe: RatioProbe,
  fromTipM: readonly number[],
  bounds: SlackBounds,
  guide: number,
  direction: 1 | -1,
): number {
  const farthest = roomOf(probe, fromTipM, bounds, guide, direction);
  const aim = (1 - closeEnough) * bounds.ceiling;
  const excessAt = (moved: number) =>
    ratiosAt(probe, fromTipM.with(guide, fromTipM[guide] + direction * moved)).worst - aim;
  let low = { x: 0, f: bounds.ceiling / slackCeiling - aim };
  for (let reach = 8e-3; ; reach *= 2.5) {
    const x = Math.min(farthest, reach);
    if (x === low.x) return x;
    const tried = { x, f: excessAt(x) };
    if (tried.f > 0) {
      const toleranceF = closeEnough * bounds.ceiling;
      const options = { toleranceX: 1e-4, toleranceF, maxEvaluations: 20 };
      const bracket = bracketedRoot(excessAt, { low, high: tried }, options);
      return bracket.high.f <= toleranceF ? bracket.high.x : bracket.low.x;
    }
    if (x === farthest) return x;
    low = tried;
  }
}

/** A slack ends this share of the ceiling below it, give or take the same: it is never too large. */
const closeEnough = 5e-4;

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
