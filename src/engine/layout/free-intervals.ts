/** What would be gained if intervals need not grow towards the butt: for showing, not for deciding. */
import { type LayoutAnswer, type LayoutScore, layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';

interface FreeIntervals {
  fromTipM: number[];
  score: LayoutScore;
  /** Share by which the least worst ratio falls. */
  gain: number;
}

/** `growing` is the answer to `request`. Undefined where its intervals are free already, or nothing is found. */
export function gainOfFreeIntervals(
  request: LayoutRequest,
  growing: LayoutAnswer,
): FreeIntervals | undefined {
  if (growing.status === 'refused' || growing.intervals === 'free') return undefined;
  const { ladder, limits, fromTipM } = growing;
  const free = layout({ ...request, ladder, limits, intervals: 'free', start: { fromTipM } });
  if (free.status === 'refused') return undefined;
  const gain = growing.leastWorst > 0 ? Math.max(0, 1 - free.leastWorst / growing.leastWorst) : 0;
  return { fromTipM: free.fromTipM, score: free.score, gain };
}
