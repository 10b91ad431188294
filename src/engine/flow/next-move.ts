/**
 * What to do about a layout, in one step: the one guide to move, and how far; or to place all anew; or one more guide;
 * or nothing, because it is as even as this blank gets. The guide to move is searched for, not presumed: often it is
 * the neighbour of the worst reading. Each guide that may move is tried between its neighbours, the others held, for
 * the least of the largest reading over its limit (ratios.ts).
 */
import { criterionOf, type Metric } from '../layout/criteria.ts';
import type { LadderReading } from '../layout/ladder.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { type LayoutRequest, settleLayout } from '../layout/layout-request.ts';
import { makeRatioProbe, type RatioProbe, type Ratios, ratiosAt } from '../layout/ratios.ts';
import type { LayoutVerdict } from '../layout/verdict.ts';
import type { WorstPlace } from '../layout/worst.ts';
import { goldenSection } from '../numerics/golden-section.ts';
import { type Stretch, stretchesFor } from './move-stretches.ts';

export interface MoveQuestion {
  request: LayoutRequest & LadderRequest;
  /** The marks as they are. */
  fromTipM: readonly number[];
  /** Least worst ratio that placing all guides anew reaches, where that is known. */
  placedWorst?: number;
  /** Fewest guides that keep the limits, where that is known (count-answer.ts). */
  fewest?: number;
  /** The start is kept for want of sureness, and these are its marks or its lawful neighbour's. */
  kept?: KeptMarks;
}
export interface KeptMarks {
  why: NonNullable<LayoutVerdict['startKept']>;
  /** Of a start that breaks a rule its nearest lawful neighbour is kept. */
  marks: 'start' | 'broken-start' | 'neighbour';
}
export interface GuideMove {
  guide: number;
  fromM: number;
  toM: number;
  /** The reading that was worst, before and after. */
  there: { metric: Metric; load: number; index: number; before: number; after: number };
  /** The reading that is worst then. */
  after: WorstPlace;
}
export interface NextMove {
  code: /** This move brings what one move can. */
    | 'move'
    /** Placing all guides anew brings more than any one move. */
    | 'place-anew'
    /** So many do not keep the limits; `fewest` do. */
    | 'more-guides'
    /** No number that was tried keeps the limits. */
    | 'beyond-limits'
    /** Nothing to gain. */
    | 'as-even-as-it-gets'
    /** Too little was read to tell whether other marks are better. */
    | 'keep'
    /** Some load finds no bend: nothing can be compared. */
    | 'no-bend';
  now: WorstPlace;
  /** The best single move, where one is worth making. */
  move?: GuideMove;
  fewest?: number;
  kept?: KeptMarks;
}
interface MoveOptions {
  /** A gain below this share is none. */
  leastGain: number;
  /** Ends of moves are rounded to this; left out: to the millimetre. */
  snapM: number;
  /** Places tried in each stretch before the best is refined. */
  places: number;
}
export const moveDefaults: MoveOptions = { leastGain: 0.02, snapM: 0.001, places: 7 };

/** `progress` hears of the share of guides tried. */
export function nextMove(
  question: MoveQuestion,
  progress: (share: number) => void = () => undefined,
  options: MoveOptions = moveDefaults,
): NextMove {
  const { request, fromTipM, placedWorst = 0, fewest, kept } = question;
  const ladder = makeLadder(request);
  const before = readLadder(ladder, fromTipM);
  const now = before.worstAt;
  if (before.status === 'not-converged') return { code: 'no-bend', now };
  if (kept) return { code: 'keep', now, kept };
  const best = bestOf(question, makeRatioProbe(ladder), progress, options);
  const move =
    best && moveOf(before, readLadder(ladder, fromTipM.with(best.guide, best.toM)), fromTipM, best);
  const worthIt = move && move.after.ratio <= (1 - options.leastGain) * now.ratio ? move : undefined;
  const reached = worthIt ? worthIt.after.ratio : now.ratio;
  const lower = placedWorst <= (1 - options.leastGain) * reached || (reached > 1 && placedWorst <= 1);
  const placingHelps = question.placedWorst !== undefined && lower;
  const code = codeOf({ reached, worthIt: worthIt !== undefined, placingHelps, placedWorst, fewest });
  const more = code === 'more-guides' ? { fewest } : {};
  return { code, now, ...(worthIt ? { move: worthIt } : {}), ...more };
}

interface Situation {
  /** Worst ratio that the best single move leaves. */
  reached: number;
  worthIt: boolean;
  placingHelps: boolean;
  placedWorst: number;
  fewest?: number;
}

function codeOf({ reached, worthIt, placingHelps, placedWorst, fewest }: Situation): NextMove['code'] {
  if (reached > 1 && placingHelps && placedWorst <= 1) return 'place-anew';
  if (reached > 1 && !(placingHelps && placedWorst <= 1) && fewest !== undefined) return 'more-guides';
  // beyond the limits all is done that helps, within them no more than is needed
  if (placingHelps && (reached > 1 || !worthIt)) return 'place-anew';
  if (worthIt) return 'move';
  return reached > 1 ? 'beyond-limits' : 'as-even-as-it-gets';
}

/** Where the worst reading lies elsewhere, the others decide: as even as they get. */
function priceOf({ values, worst }: Ratios): number {
  const squares = values.reduce((sum, value) => sum + value * value, 0);
  return worst + 1e-3 * Math.sqrt(squares / values.length);
}

interface Tried {
  toM: number;
  price: number;
}

/** Undefined where no guide has room to move. */
function bestOf(
  { request, fromTipM }: MoveQuestion,
  probe: RatioProbe,
  progress: (share: number) => void,
  options: MoveOptions,
): (Tried & { guide: number }) | undefined {
  const settled = settleLayout(request);
  if (!settled) return undefined;
  let best: (Tried & { guide: number }) | undefined;
  fromTipM.forEach((fromM, guide) => {
    if (settled.held[guide] === undefined) {
      const priceAt = (toM: number) => priceOf(ratiosAt(probe, fromTipM.with(guide, toM)));
      for (const stretch of stretchesFor(guide, fromTipM, settled)) {
        const tried = leastIn(stretch, priceAt, options);
        if (!best || tried.price < best.price) best = { ...tried, guide };
      }
      // back to where it stands, so that the next guide's bends start from these marks
      priceAt(fromM);
    }
    progress((guide + 1) / fromTipM.length);
  });
  return best;
}

/** Least of evenly spread places, narrowed beside the best of them, rounded to the tick. */
function leastIn(
  { fromM, toM }: Stretch,
  priceAt: (toM: number) => number,
  { places, snapM }: MoveOptions,
): Tried {
  const tryAt = (at: number): Tried => ({ toM: at, price: priceAt(at) });
  const stepM = (toM - fromM) / (places - 1);
  const spread = cheapest(Array.from({ length: places }, (_, i) => tryAt(fromM + i * stepM)));
  const [low, high] = [Math.max(fromM, spread.toM - stepM), Math.min(toM, spread.toM + stepM)];
  const { at } = goldenSection(priceAt, low, high, snapM / 2);
  const ticks = [Math.floor(at / snapM), Math.ceil(at / snapM)].map((tick) => tick * snapM);
  const within = ticks.filter((tick) => tick >= fromM && tick <= toM).map(tryAt);
  return within.length > 0 ? cheapest(within) : spread;
}

function cheapest(tried: readonly Tried[]): Tried {
  return tried.reduce((least, one) => (one.price < least.price ? one : least));
}

function moveOf(
  before: LadderReading,
  after: LadderReading,
  fromTipM: readonly number[],
  { guide, toM }: Tried & { guide: number },
): GuideMove | undefined {
  if (after.status === 'not-converged') return undefined;
  const { metric, load, index, value } = before.worstAt;
  return {
    guide,
    fromM: fromTipM[guide],
    toM,
    there: { metric, load, index, before: value, after: readingAt(after, metric, load, index) },
    after: after.worstAt,
  };
}

function readingAt({ loads }: LadderReading, metric: Metric, load: number, index: number): number {
  const criterion = criterionOf(metric);
  const { rings, spans } = loads[load];
  return criterion.at === 'ring' ? criterion.of(rings[index]) : criterion.of(spans[index]);
}
