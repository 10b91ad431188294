/**
 * Which few guides to move, and where, so that the worst reading over the ladder falls; or none.
 *
 * On the most probable rod, sets of one, two and three guides are tried, each set moved to its best by the layout's
 * own search (layout/trust-search.ts) while the others stay; the best few sets of one are extended to two, then
 * three. A set counts only where its gain holds on the rods that fit all readings, drawn at random with the guides'
 * places as uncertain as they were seen: on 95 of 100 the worst reading falls, and in the mean by `worthwhile`. The
 * fewest moves that bring nearly all of the gain are proposed.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import type { KeepOut } from '../layout/kept-free.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { type SettledLayout, settleLayout } from '../layout/layout-request.ts';
import { nearestLayout, type PlacingRules, placingRows } from '../layout/placing-rules.ts';
import { freshRatiosAt, makeRatioProbe, type RatioProbe } from '../layout/ratios.ts';
import { searchDefaults, trustSearch } from '../layout/trust-search.ts';
import type { WorstPlace } from '../layout/worst.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';

interface MovesRequest {
  /** The layout's question on the most probable rod; `rod` is the free one. */
  layout: LayoutRequest & LadderRequest;
  /** Where the guides stand, and where their marks are. */
  fromTipM: readonly number[];
  marksFromTipM: readonly number[];
  /** Standard deviation of each place. */
  stationSigmaM: readonly number[];
  /** Whole blanks that fit all readings. */
  blanks: readonly BlankTables[];
}
export interface GuideMove {
  /** 0 the one next to the tip-top. */
  guide: number;
  fromM: number;
  toM: number;
}
export interface MovesAnswer {
  /** Towards the tip first; empty: leave it. */
  moves: GuideMove[];
  /** Largest reading over its limit, now and after the moves. */
  now: WorstPlace;
  after: WorstPlace;
  /** Paired over the blanks: mean fall of the worst ratio and its 95 % ±, of the proposed moves or of the best tried. */
  gain: number;
  gainPlusMinus: number;
  /** On how many of the blanks it fell, of how many that bend. */
  fell: number;
  of: number;
}
const movesDefaults = {
  most: 3,
  /** Sets followed from one size to the next. */
  beam: 3,
  /** A fall of the worst ratio below this is not worth the tape. */
  worthwhile: 0.05,
  /** Share of the drawn rods on which it must fall. */
  sure: 0.95,
  /** The fewest moves that bring this share of the best gain. */
  nearlyAll: 0.85,
  /** A smaller move than this is within the tape. */
  leastMoveM: 0.003,
  roundM: 0.001,
  resolution: 90,
  steps: 10,
  seed: 11,
};

/** Undefined where the rod as it stands finds no bend under some load. */
export function findMoves(request: MovesRequest, options = movesDefaults): MovesAnswer | undefined {
  const { layout, fromTipM } = request;
  const settled = settleLayout({ ...layout, start: { fromTipM } });
  if (!settled) return undefined;
  const ladder = makeLadder(layout, { resolution: options.resolution });
  const probe = makeRatioProbe(ladder);
  const before = freshRatiosAt(probe, fromTipM).worst;
  if (!Number.isFinite(before)) return undefined;
  const sets = [...triedSets(probe, settled, request, options), ...backOnMarks(probe, request, options)];
  const judged = sets.map((set) => ({ set, ...pairedGain(request, set.fromTipM, options) }));
  const holding = judged.filter(
    ({ gain, fell, of, set }) =>
      of > 0 &&
      fell >= options.sure * of &&
      gain >= options.worthwhile &&
      before - set.worst >= options.worthwhile,
  );
  const best = Math.max(0, ...holding.map(({ gain }) => gain));
  const [chosen] = holding
    .filter(({ gain }) => gain >= options.nearlyAll * best)
    .sort((a, b) => a.set.moved.length - b.set.moved.length || b.gain - a.gain);
  const strongest = judged.toSorted((a, b) => b.gain - a.gain)[0];
  const shown = chosen ?? strongest;
  const placed = chosen?.set.fromTipM ?? fromTipM;
  return {
    moves: chosen ? movesOf(fromTipM, placed) : [],
    now: readLadder(ladder, fromTipM).worstAt,
    after: readLadder(ladder, placed).worstAt,
    gain: shown?.gain ?? 0,
    gainPlusMinus: shown?.plusMinus ?? 0,
    fell: shown?.fell ?? 0,
    of: shown?.of ?? request.blanks.length,
  };
}

interface MovedSet {
  moved: number[];
  fromTipM: number[];
  worst: number;
}

/** The best set of each size that was met, and its runners-up. */
function triedSets(
  probe: RatioProbe,
  settled: SettledLayout,
  request: MovesRequest,
  options: typeof movesDefaults,
): MovedSet[] {
  const { fromTipM } = request;
  const free = fromTipM.map((_, guide) => guide).filter((guide) => mayMove(request, guide));
  const seen = new Set<string>();
  const all: MovedSet[] = [];
  let frontier: MovedSet[] = [{ moved: [], fromTipM: [...fromTipM], worst: Number.POSITIVE_INFINITY }];
  for (let size = 1; size <= options.most; size++) {
    const next: MovedSet[] = [];
    for (const set of frontier) {
      for (const guide of free) {
        const moved = [...set.moved, guide].sort((a, b) => a - b);
        if (set.moved.includes(guide) || seen.has(moved.join())) continue;
        seen.add(moved.join());
        const placed = placeSet(probe, settled, fromTipM, set.fromTipM, moved, options);
        if (placed) next.push(placed);
      }
    }
    next.sort((a, b) => a.worst - b.worst);
    frontier = next.slice(0, options.beam);
    all.push(...frontier.slice(0, size === 1 ? 2 : 1));
  }
  return all;
}

/** What the builder pinned stays, and so do the first and the stripping guide, unless they are off their marks. */
function mayMove({ layout, fromTipM, marksFromTipM }: MovesRequest, guide: number): boolean {
  if (fromTipM[guide] !== marksFromTipM[guide]) return true;
  const { pinned = [] } = layout;
  return guide > 0 && guide < fromTipM.length - 1 && !pinned.some(({ index }) => index === guide);
}

/** Every guide that stands off its mark put back on it, where they are few enough. */
function backOnMarks(
  probe: RatioProbe,
  { fromTipM, marksFromTipM }: MovesRequest,
  { most }: typeof movesDefaults,
): MovedSet[] {
  const moved = fromTipM.flatMap((at, guide) => (at === marksFromTipM[guide] ? [] : [guide]));
  if (moved.length === 0 || moved.length > most) return [];
  return [{ moved, fromTipM: [...marksFromTipM], worst: freshRatiosAt(probe, marksFromTipM).worst }];
}

function placeSet(
  probe: RatioProbe,
  settled: SettledLayout,
  stands: readonly number[],
  start: readonly number[],
  moved: readonly number[],
  options: typeof movesDefaults,
): MovedSet | undefined {
  const rules = rulesFor(settled, stands, moved);
  const from = nearestLayout(rules, start);
  if (!from) return undefined;
  const search = { ...searchDefaults, maxSteps: options.steps, tolerance: 1e-3 };
  const placed = trustSearch(probe, rules, from, { weight: 1, floor: 0 }, search);
  const fromTipM = placed.fromTipM.map((at, guide) =>
    moved.includes(guide) ? Math.round(at / options.roundM) * options.roundM : at,
  );
  const real = moved.filter((guide) => Math.abs(fromTipM[guide] - stands[guide]) >= options.leastMoveM);
  if (real.length < moved.length) return undefined;
  return { moved: [...moved], fromTipM, worst: freshRatiosAt(probe, fromTipM).worst };
}

/** All but the moved guides stay; intervals must grow only where they do now; a zone is not stepped over. */
function rulesFor(settled: SettledLayout, stands: readonly number[], moved: readonly number[]): PlacingRules {
  const bounds = stands.map((at, guide) => stretchOf(settled.keepOut, settled.halfFootM[guide], at));
  const rules: PlacingRules = {
    count: stands.length,
    held: stands.map((at, guide) => (moved.includes(guide) ? undefined : at)),
    leastIntervalM: settled.leastIntervalM.map((least, i) => Math.min(least, stands[i + 1] - stands[i])),
    growth: settled.intervals,
    lowM: bounds.map(({ lowM }) => lowM),
    highM: bounds.map(({ highM }) => highM),
  };
  const grown = placingRows(rules);
  const feasible = !grown.broken && nearestLayout(rules, stands) !== undefined;
  return feasible ? rules : { ...rules, growth: 'free' };
}

/** Between the kept-free zones on both sides; a guide that stands in one may leave it either way. */
function stretchOf(zones: readonly KeepOut[], halfFootM: number, at: number) {
  const clear = zones.map((zone) => ({ from: zone.fromTipM - halfFootM, to: zone.toTipM + halfFootM }));
  const below = clear.filter(({ to }) => to <= at + 1e-6).map(({ to }) => to);
  const above = clear.filter(({ from }) => from >= at - 1e-6).map(({ from }) => from);
  return {
    lowM: Math.max(0.03, ...below),
    highM: Math.min(Number.POSITIVE_INFINITY, ...above),
  };
}

/** Worst now less worst after, blank by blank, the guides' places shaken alike before and after. */
function pairedGain(
  { layout, fromTipM, stationSigmaM, blanks }: MovesRequest,
  placed: readonly number[],
  options: typeof movesDefaults,
) {
  const normal = seededNormal(seededRandom(options.seed));
  const gains = blanks.flatMap((blank) => {
    const shake = fromTipM.map((_, guide) => normal() * stationSigmaM[guide]);
    const rod = freeRod(blank, layout.rod.lengthM);
    const ladder = makeLadder({ ...layout, rod }, { resolution: options.resolution });
    const probe = makeRatioProbe(ladder);
    const worstAt = (stations: readonly number[]) =>
      freshRatiosAt(probe, ascending(stations, layout.rod.lengthM)).worst;
    const now = worstAt(fromTipM.map((at, guide) => at + shake[guide]));
    const after = worstAt(placed.map((at, guide) => (at === fromTipM[guide] ? at + shake[guide] : at)));
    return Number.isFinite(now) && Number.isFinite(after) ? [now - after] : [];
  });
  const mean = gains.reduce((sum, gain) => sum + gain, 0) / Math.max(1, gains.length);
  const square = gains.reduce((sum, gain) => sum + (gain - mean) ** 2, 0) / Math.max(1, gains.length - 1);
  return {
    gain: gains.length > 0 ? mean : 0,
    plusMinus: 1.96 * Math.sqrt(square),
    fell: gains.filter((gain) => gain > 0).length,
    of: gains.length,
  };
}

function ascending(stations: readonly number[], lengthM: number): number[] {
  let before = 0;
  return stations.map((at, i) => {
    before = Math.min(lengthM - 0.002 * (stations.length - i), Math.max(at, before + 0.002));
    return before;
  });
}

function movesOf(stands: readonly number[], placed: readonly number[]): GuideMove[] {
  return placed.flatMap((toM, guide) =>
    toM === stands[guide] ? [] : [{ guide, fromM: stands[guide], toM }],
  );
}
