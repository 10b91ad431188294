/**
 * How far the best place of every guide moves over blanks that fit the readings: the guides are placed anew on
 * each. A place may move far where it hardly matters, so what keeping the proposed marks would cost on each
 * blank stands beside it.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import type { LadderRequest } from '../layout/ladder.ts';
import { layout } from '../layout/layout.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { quantile } from './spread.ts';

export interface SpreadQuestion {
  /** What the marks were proposed for. */
  request: LayoutRequest & LadderRequest;
  proposedFromTipM: readonly number[];
}
export interface MarkSpread {
  /** Blanks on which the guides were placed anew, of those tried. */
  blanks: number;
  tried: number;
  /** ± of each mark, 95 %: 1.96 root mean squares of best place less proposed mark. */
  plusMinusM: number[];
  /** On 95 of 100 blanks the worst reading of the proposed marks is at most this share above the best one's. */
  costOfKeeping: number;
}

/** `progress` hears of the answer after every blank. */
export function spreadOfMarks(
  { request, proposedFromTipM }: SpreadQuestion,
  blanks: readonly BlankTables[],
  progress: (soFar: MarkSpread) => void = () => undefined,
): MarkSpread {
  const moved: number[][] = [];
  const costs: number[] = [];
  let soFar = summary(proposedFromTipM.length, moved, costs, 0);
  blanks.forEach((blank, index) => {
    const rod = freeRod(blank, request.rod.lengthM);
    const placed = layout({ ...request, rod, start: { fromTipM: proposedFromTipM } });
    if (placed.status === 'converged') {
      moved.push(placed.fromTipM.map((at, guide) => at - proposedFromTipM[guide]));
      costs.push(Math.max(0, placed.startScore.worst / placed.score.worst - 1));
    }
    soFar = summary(proposedFromTipM.length, moved, costs, index + 1);
    progress(soFar);
  });
  return soFar;
}

function summary(
  count: number,
  moved: readonly number[][],
  costs: readonly number[],
  tried: number,
): MarkSpread {
  const plusMinusM = Array.from({ length: count }, (_, guide) => {
    const square = moved.reduce((sum, by) => sum + by[guide] ** 2, 0);
    return 1.96 * Math.sqrt(square / moved.length);
  });
  const sorted = [...costs].sort((a, b) => a - b);
  return { blanks: moved.length, tried, plusMinusM, costOfKeeping: quantile(sorted, 0.95) };
}
