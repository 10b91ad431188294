/**
 * The two aims in turn: the least worst ratio, from several starts and past every kept-free zone; then the
 * smoothest progression among layouts hardly worse.
 */
import { seededRandom } from '../numerics/seeded-random.ts';
import { anyClear, deepestClash, placeClear, type ZoneSearch } from './kept-free.ts';
import type { LadderReading } from './ladder.ts';
import { rulesOf, type SettledLayout } from './layout-request.ts';
import { nearestLayout, type PlacingRules } from './placing-rules.ts';
import type { RatioProbe } from './ratios.ts';
import { demandLayout, geometricLayout, randomLayout } from './starts.ts';
import { type Aim, type Placed, type SearchOptions, searchDefaults, trustSearch } from './trust-search.ts';
import { unevennessModel } from './unevenness.ts';

export interface PlacedGuides {
  fromTipM: number[];
  /** Least worst ratio found, before smoothing. */
  leastWorst: number;
  /** The search past the zones was ended by its bound on subproblems. */
  cutShort: boolean;
}
interface PlaceOptions {
  /** How far above the least the worst ratio may be for a smoother progression: 2 %, less a reserve for the
   * calculation's own error. */
  smoothingShare: number;
  /** Bound on subproblems past the zones, per aim, for 60 moving guides times loads; fewer for larger tasks. */
  maxNodes: number;
  /** Steps that every start gets, and how many starts are followed further. */
  screenSteps: number;
  screenKeeps: number;
}
export const placeDefaults: PlaceOptions = {
  smoothingShare: 0.018,
  maxNodes: 120,
  screenSteps: 3,
  screenKeeps: 3,
};

/** Called with every better layout on the way to the least worst, then with the smoothed one. */
type PlaceProgress = (stage: 'least' | 'smooth', placed: Placed) => void;

/** The same ladder on a mesh for searching and on the one that the answer is read on. */
interface PlaceProbes {
  rough: RatioProbe;
  fine: RatioProbe;
}

/** Undefined where no layout keeps the rules. `startReading` is of the settled start. */
export function placeGuides(
  { rough, fine }: PlaceProbes,
  settled: SettledLayout,
  startReading: LadderReading,
  progress: PlaceProgress = () => {},
  options: PlaceOptions = placeDefaults,
): PlacedGuides | undefined {
  const rules = rulesOf(settled);
  const leastAim: Aim = { weight: 1, floor: 0 };
  let shown = Number.POSITIVE_INFINITY;
  const show = (placed: Placed, branch: PlacingRules) => {
    if (!(placed.worst < shown) || deepestClash(search, branch, placed.fromTipM)) return;
    shown = placed.worst;
    progress('least', placed);
  };
  const search = zoneSearch(settled, options, (branch, start) => {
    const placed = trustSearch(rough, branch, start, leastAim);
    show(placed, branch);
    return placed;
  });
  const starts = startsFor(rules, settled, startReading);
  const kept = promising(rough, rules, starts, options);
  for (const placed of kept) show(placed, rules);
  const found = placeClear(
    search,
    rules,
    kept.length > 0 ? kept.map(({ fromTipM }) => fromTipM) : [starts[0]],
  );
  if (!found.best && found.cutShort) {
    // too many zones to search through: at least one way past them, followed to its best
    const any = anyClear(search, rules, settled.start.fromTipM);
    found.best = any.best && trustSearch(rough, any.rules, any.best.fromTipM, leastAim);
    found.rules = any.rules;
  }
  if (!found.best) return undefined;
  const least = trustSearch(fine, found.rules, found.best.fromTipM, leastAim);
  const smooth = smoothed(rough, settled, found.best, options);
  const aim = smoothAim(least.worst, options);
  const finest = smooth.best && trustSearch(fine, smooth.rules, smooth.best.fromTipM, aim, smoothSearch);
  const answer = finest && isInBand(finest, aim) ? finest : least;
  progress('smooth', answer);
  return {
    fromTipM: answer.fromTipM,
    leastWorst: least.worst,
    cutShort: found.cutShort || smooth.cutShort,
  };
}

/** A few steps from every start; the best of them are worth following to the end. */
function promising(
  probe: RatioProbe,
  rules: PlacingRules,
  starts: readonly number[][],
  { screenSteps, screenKeeps }: PlaceOptions,
): Placed[] {
  const screened = starts.flatMap((start) => {
    const nearest = nearestLayout(rules, start);
    const options = { ...searchDefaults, maxSteps: screenSteps };
    return nearest ? [trustSearch(probe, rules, nearest, { weight: 1, floor: 0 }, options)] : [];
  });
  return screened.sort((a, b) => a.worst - b.worst).slice(0, screenKeeps);
}

/** The worst ratio has several valleys, deep ones apart from each other: start in many places. */
function startsFor(rules: PlacingRules, settled: SettledLayout, startReading: LadderReading): number[][] {
  const { fromTipM } = settled.start;
  const random = seededRandom(1);
  return [
    fromTipM,
    demandLayout(rules, fromTipM, startReading, settled.limits),
    ...[1, 1.08, 1.16, 1.24].map((factor) => geometricLayout(rules, factor)),
    ...[9, 9, 9, 9].map((spread) => randomLayout(rules, random, spread)),
  ];
}

/**
 * Where intervals grow, the first one between guides is held to the one from the tip-top too, as long as that
 * costs no more than the smoothing may.
 */
function smoothed(probe: RatioProbe, settled: SettledLayout, least: Placed, options: PlaceOptions) {
  const aim = smoothAim(least.worst, options);
  const search = zoneSearch(settled, options, (branch, start) => {
    const placed = trustSearch(probe, branch, start, aim, smoothSearch);
    return isInBand(placed, aim) ? placed : undefined;
  });
  const rules = rulesOf(settled);
  const starts = [least.fromTipM, settled.start.fromTipM];
  if (settled.intervals === 'growing') {
    const strict = placeClear(search, { ...rules, growth: 'growing-from-tip' }, starts);
    if (strict.best) return strict;
  }
  return placeClear(search, rules, starts);
}

function smoothAim(leastWorst: number, { smoothingShare }: PlaceOptions): Aim {
  return { shape: unevennessModel, weight: 100, floor: leastWorst * (1 + smoothingShare) };
}
const smoothSearch: SearchOptions = { ...searchDefaults, tolerance: 2e-3 };

/** The price of leaving the band is finite: a thousandth beyond it is within the reserve. */
function isInBand({ worst }: Placed, { floor }: Aim): boolean {
  return worst <= floor * (1 + 1e-3);
}

function zoneSearch(settled: SettledLayout, options: PlaceOptions, place: ZoneSearch['place']): ZoneSearch {
  const { keepOut: zones, halfFootM, held, ladder } = settled;
  const size = (held.length * ladder.length) / 60;
  const maxNodes = Math.ceil(Math.max(options.maxNodes / 10, options.maxNodes / Math.max(1, size)));
  return { zones, halfFootM, maxNodes, place };
}
