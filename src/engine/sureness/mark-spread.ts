/**
 * How far the best place of every guide moves over blanks that fit the readings: the guides are placed anew on
 * each. A place may move far where it hardly matters, so what keeping the proposed marks would cost on each
 * blank stands beside it.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { type LayoutRequest, settleLayout } from '../layout/layout-request.ts';
import { placeDefaults, placeGuides } from '../layout/place-guides.ts';
import { freshRatiosAt, makeRatioProbe } from '../layout/ratios.ts';
import { quantile, reachOf95 } from './spread.ts';

export interface SpreadQuestion {
  /** What the marks were proposed for. */
  request: LayoutRequest & LadderRequest;
  proposedFromTipM: readonly number[];
}
export interface MarkSpread {
  /** Blanks on which the guides were placed anew, of those tried. */
  blanks: number;
  tried: number;
  /** ± of each mark, 95 %, as known from so few blanks: root mean square of best place less proposed mark times Student's reach. */
  plusMinusM: number[];
  /** On 95 of 100 blanks the worst reading of the proposed marks is at most this share above the best one's. */
  costOfKeeping: number;
  /** The same share on the mean of the blanks. */
  expectedCost: number;
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
    const placed = placeAnew({ ...request, rod, start: { fromTipM: proposedFromTipM } }, 'near');
    if (placed) {
      moved.push(placed.fromTipM.map((at, guide) => at - proposedFromTipM[guide]));
      costs.push(Math.max(0, placed.keptWorst / placed.worst - 1));
    }
    soFar = summary(proposedFromTipM.length, moved, costs, index + 1);
    progress(soFar);
  });
  return soFar;
}

export interface PlacedAnew {
  fromTipM: readonly number[];
  worst: number;
  /** Of the marks that were there before. */
  keptWorst: number;
}

/** 'near': from the start alone, for a blank hardly different; 'anywhere': from a few other starts too. */
export type PlaceSearch = 'near' | 'anywhere';

/** The layout's own two aims, on the mesh of its search alone; undefined where some load finds no bend. */
export function placeAnew(
  request: SpreadQuestion['request'],
  search: PlaceSearch = 'anywhere',
): PlacedAnew | undefined {
  const settled = settleLayout(request);
  if (!settled) return undefined;
  const ladder = makeLadder(request);
  const kept = readLadder(ladder, settled.start.fromTipM);
  if (kept.status === 'not-converged') return undefined;
  const probe = makeRatioProbe(ladder);
  const options = { ...placeDefaults, screenSteps: search === 'near' ? 0 : 2, screenKeeps: 1 };
  const placed = placeGuides({ rough: probe, fine: probe }, settled, kept, undefined, options);
  if (!placed) return undefined;
  const { worst } = freshRatiosAt(probe, placed.fromTipM);
  return Number.isFinite(worst) ? { fromTipM: placed.fromTipM, worst, keptWorst: kept.worst } : undefined;
}

function summary(
  count: number,
  moved: readonly number[][],
  costs: readonly number[],
  tried: number,
): MarkSpread {
  const plusMinusM = Array.from({ length: count }, (_, guide) => {
    const square = moved.reduce((sum, by) => sum + by[guide] ** 2, 0);
    return reachOf95(moved.length) * Math.sqrt(square / moved.length);
  });
  const sorted = [...costs].sort((a, b) => a - b);
  const expectedCost = costs.reduce((sum, cost) => sum + cost, 0) / costs.length;
  return { blanks: moved.length, tried, plusMinusM, costOfKeeping: quantile(sorted, 0.95), expectedCost };
}
