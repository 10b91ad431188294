/** Everything the Layout sheet is made from, in SI: what the record says, filled up with what is common. */
import { type AssembledBlank, assembleBlank } from '../../engine/bench/assemble.ts';
import type { Bench } from '../../engine/bench/bench.ts';
import { commonGuides, commonMarks, type Guide } from '../../engine/bench/default-guides.ts';
import { type DiameterRow, diameterAt, diameterProfile } from '../../engine/bench/diameter-profile.ts';
import { type FerruleZone, keepOutZones } from '../../engine/bench/ferrule-zones.ts';
import { type BlankTables, type FreeRod, freeRod } from '../../engine/bench/free-rod.ts';
import { arithmeticRule } from '../../engine/bench/start-list.ts';
import { type StrainLevels, strainLevels } from '../../engine/bench/strain.ts';
import type { Choices, LoadBy } from '../../engine/flow/choices.ts';
import type { LadderLoad, LadderRequest, LayoutLimits } from '../../engine/layout/ladder.ts';
import { defaultLadder, defaultLimits } from '../../engine/layout/layout-defaults.ts';
import { type LayoutRequest, smallestIntervalM } from '../../engine/layout/layout-request.ts';
import { standardGravity } from '../../engine/units/gravity.ts';
import type { LadderSheet } from '../worker/messages.ts';
import type { GuideField } from './guide-moves.ts';

export interface SheetParts {
  bench: Bench;
  choices: Choices;
  /** The fitted blank, or its first estimate. */
  tables: BlankTables;
}
export interface SheetModel {
  blank: AssembledBlank;
  rod: FreeRod;
  diameters: DiameterRow[];
  keepOut: FerruleZone[];
  strain: StrainLevels;
  choices: Choices;
  handle: Bench['handle'];
  loads: SheetLoads;
  limits: LayoutLimits;
  /** The start's marks as they were given; empty where the rule or list makes none. */
  startFromTipM: readonly number[];
  /** Whether a rod can be bent with them: they climb from the tip to less than the grip. */
  startStands: boolean;
  /** Why our own marks cannot be read, in a sentence. */
  unreadable: string | undefined;
  /** Whether the record has marks of its own; without them the start's stand in. */
  marked: boolean;
  field: GuideField;
  ladder: LadderSheet;
  restLadder: LadderSheet;
  startLadder: LadderSheet;
  /** Asks for the best layout with the builder's rule for intervals. */
  request: LayoutRequest;
}
export interface SheetLoads {
  kg: readonly number[];
  /** Whether the builder gave them himself. */
  given: boolean;
  /** Why there are none. */
  missing: string | undefined;
  ladder: readonly LadderLoad[];
}

/** The room in front of the grip that a layout needs at least. */
const leastFreeM = 0.3;

/** Undefined where the blank has no such room, no diameter or no guide. */
export function sheetModel({ bench, choices, tables }: SheetParts): SheetModel | undefined {
  const blank = assembleBlank(bench.sections);
  const diameters = diameterProfile(bench.sections, blank);
  const freeM = blank.lengthM - bench.handle.gripFrontFromButtM;
  if (!(freeM > leastFreeM) || diameters.length === 0 || choices.guides.length < 2) return undefined;
  const rod = freeRod(tables, freeM);
  const limits = { ...defaultLimits(freeM), ...choices.limits };
  const loads = sheetLoads(choices, rod);
  const keepOut = keepOutZones(blank, choices.ferruleClearM);
  const startFromTipM = startMarks(choices);
  const start = climbs(startFromTipM, freeM) ? startFromTipM : [];
  const { marked, fromTipM } = ourMarks(choices, start, blank.lengthM, bench.handle);
  const ladderOf = (guides: readonly Guide[], marks: readonly number[]): LadderSheet => ({
    diameters,
    ladder: ladderRequest({ bench, choices, rod, limits, loads, diameters }, guides, marks),
  });
  const ladder = ladderOf(choices.guides, evenly(fromTipM, choices.guides.length));
  const footM = choices.guides.map(({ lengthM }) => lengthM);
  const pinned = choices.guides.map((guide) => guide.pinned);
  return {
    blank,
    rod,
    diameters,
    keepOut,
    strain: strainLevels(bench),
    choices,
    handle: bench.handle,
    loads,
    limits,
    startFromTipM,
    startStands: start.length > 1,
    unreadable: whyUnreadable(fromTipM, freeM),
    marked,
    field: {
      fromTipM,
      footM,
      keepOut,
      pinned,
      room: { fromTipM: smallestIntervalM, toTipM: freeM - footM[footM.length - 1] / 2 },
      leastIntervalM: smallestIntervalM,
    },
    ladder,
    restLadder: { diameters, ladder: { ...ladder.ladder, ladder: [noLoad] } },
    startLadder: ladderOf(guidesFor(choices, blank.lengthM, start.length), start),
    request: {
      ...ladder.ladder,
      firstFromTipM: fromTipM[0],
      strippingFromTipM: fromTipM[fromTipM.length - 1],
      footM,
      keepOut,
      pinned: pinned.flatMap((held, index) => (held ? [{ index, fromTipM: fromTipM[index] }] : [])),
      intervals: choices.intervals,
      ...(start.length === choices.guides.length ? { start: { fromTipM: start } } : {}),
    },
  };
}

const down = -Math.PI / 2;
const noLoad: LadderLoad = { tensionN: 0, pullAngleRad: down };

function sheetLoads(choices: Choices, rod: FreeRod): SheetLoads {
  const given = choices.ladderKg;
  const common = given ? undefined : defaultLadder(rod);
  const kg = given ?? (common?.ladder ?? []).map(({ tensionN }) => handyLoad(tensionN / standardGravity));
  return {
    kg,
    given: given !== undefined,
    missing: common?.reason,
    ladder: kg.map((load) => ladderLoad(load, choices.loadBy, choices.tautLineKg)),
  };
}

function ladderLoad(kg: number, loadBy: LoadBy, tautLineKg: number): LadderLoad {
  if (loadBy === 'line') return { tensionN: kg * standardGravity, pullAngleRad: down };
  return { tensionN: tautLineKg * standardGravity, pullAngleRad: down, tiedN: kg * standardGravity };
}

/** A weight that can be put together on a bench: nobody hangs 203.7 g. */
function handyLoad(kg: number): number {
  const grams = kg * 1000;
  const step = grams < 20 ? 1 : grams < 100 ? 5 : grams < 500 ? 10 : 50;
  return (Math.max(1, Math.round(grams / step)) * step) / 1000;
}

function startMarks({ start }: Choices): readonly number[] {
  if (start.kind === 'list') return start.fromTipM;
  const rule = arithmeticRule(start);
  return rule.ok ? rule.fromTipM : [];
}

/** The record's marks, or the start's while any is missing, or common ones spread evenly where it makes none. */
function ourMarks(choices: Choices, start: readonly number[], blankLengthM: number, handle: Bench['handle']) {
  const { guides } = choices;
  const own = guides.flatMap(({ stationM }) => stationM ?? []);
  if (own.length === guides.length) return { marked: true, fromTipM: own.sort((a, b) => a - b) };
  if (start.length === guides.length) return { marked: false, fromTipM: start };
  const { firstFromTipM, strippingFromTipM } = commonMarks(blankLengthM, handle.gripFrontFromButtM);
  return { marked: false, fromTipM: evenly([firstFromTipM, strippingFromTipM], guides.length) };
}

/** Rings nearer to each other than this cannot be bent apart. */
const closestRingsM = 2e-3;

function climbs(fromTipM: readonly number[], freeM: number): boolean {
  return [...fromTipM, freeM].every((at, i, all) => at - (all[i - 1] ?? 0) >= closestRingsM);
}

function whyUnreadable(fromTipM: readonly number[], freeM: number): string | undefined {
  const clash = [...fromTipM, freeM].findIndex((at, i, all) => at - (all[i - 1] ?? 0) < closestRingsM);
  if (clash < 0) return undefined;
  if (clash === 0) return 'Guide 1 stands at the tip-top: move it towards the butt.';
  if (clash === fromTipM.length) return `Guide ${clash} stands under the grip: move it towards the tip.`;
  return `Guides ${clash} and ${clash + 1} stand at the same place: move one of them.`;
}

function evenly(marks: readonly number[], count: number): number[] {
  const [first, last] = [marks[0], marks[marks.length - 1]];
  return Array.from({ length: count }, (_, i) => first + ((last - first) * i) / Math.max(1, count - 1));
}

/** The builder's guides for a list of as many marks, else common ones. */
function guidesFor(choices: Choices, blankLengthM: number, count: number): readonly Guide[] {
  return count === choices.guides.length
    ? choices.guides
    : commonGuides({ ...choices, blankLengthM }, count).guides;
}

interface LadderParts extends Pick<SheetParts, 'bench' | 'choices'> {
  rod: FreeRod;
  limits: LayoutLimits;
  loads: SheetLoads;
  diameters: readonly DiameterRow[];
}

/** A ring's height is given from the blank's surface, and wanted from its axis at about where the guide stands. */
function ladderRequest(
  parts: LadderParts,
  guides: readonly Guide[],
  marks: readonly number[],
): LadderRequest {
  const { bench, choices, rod, limits, loads, diameters } = parts;
  const { gripFrontFromButtM, reelFromButtM, reelOffsetM } = bench.handle;
  const radiusAt = (fromTipM: number) => (diameterAt(diameters, fromTipM) ?? 0) / 2;
  return {
    rod,
    buttAngleRad: choices.buttAngleRad,
    reel: { alongM: reelFromButtM - gripFrontFromButtM, offsetM: reelOffsetM },
    guides: {
      count: guides.length,
      ringHeightsM: guides.map(({ ringHeightM }, i) => ringHeightM + radiusAt(marks[i])),
      massesKg: guides.map(({ massKg }) => massKg),
      side: choices.side,
    },
    tipTop: { ringHeightM: choices.tipTop.ringHeightM, massKg: choices.tipTop.massKg },
    ladder: loads.ladder,
    limits,
  };
}
