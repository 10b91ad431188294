/** Where one guide may go while the others stay: the stretches between its neighbours that keep the placing's rules. */
import type { SettledLayout } from '../layout/layout-request.ts';
import { smallestIntervalM } from '../layout/layout-request.ts';

export interface Stretch {
  fromM: number;
  toM: number;
}

/** A mark may be this far off a rule already, by its tape's tick. */
const tickM = 3.2e-3;

export function stretchesFor(
  guide: number,
  fromTipM: readonly number[],
  { leastIntervalM, keepOut, halfFootM, intervals }: SettledLayout,
): Stretch[] {
  const last = fromTipM.length - 1;
  const lows = [guide === 0 ? smallestIntervalM : fromTipM[guide - 1] + leastIntervalM[guide - 1]];
  const highs = [guide === last ? fromTipM[last] : fromTipM[guide + 1] - leastIntervalM[guide]];
  if (intervals === 'growing') {
    const { low, high } = growingBounds(guide, fromTipM);
    lows.push(low);
    highs.push(high);
  }
  let stretches: Stretch[] = [{ fromM: Math.max(...lows), toM: Math.min(...highs) }];
  for (const zone of keepOut) {
    const [fromM, toM] = [zone.fromTipM - halfFootM[guide], zone.toTipM + halfFootM[guide]];
    stretches = stretches.flatMap((stretch) => [
      { fromM: stretch.fromM, toM: Math.min(stretch.toM, fromM) },
      { fromM: Math.max(stretch.fromM, toM), toM: stretch.toM },
    ]);
  }
  return stretches.filter(({ fromM, toM }) => toM >= fromM);
}

/** Interval i ends at guide i. Each of the three pairs that this guide's mark is in keeps its order, if it has it now. */
function growingBounds(guide: number, fromTipM: readonly number[]): { low: number; high: number } {
  const at = (i: number) => fromTipM[i];
  const grows = (i: number) => at(i + 1) - at(i) >= at(i) - at(i - 1) - tickM;
  const pairs = (i: number) => i >= 1 && i + 1 < fromTipM.length && grows(i);
  const slackM = tickM / 2;
  return {
    low: Math.max(
      pairs(guide - 1) ? 2 * at(guide - 1) - at(guide - 2) - slackM : Number.NEGATIVE_INFINITY,
      pairs(guide + 1) ? 2 * at(guide + 1) - at(guide + 2) - slackM : Number.NEGATIVE_INFINITY,
    ),
    high: pairs(guide) ? (at(guide - 1) + at(guide + 1)) / 2 + slackM : Number.POSITIVE_INFINITY,
  };
}
