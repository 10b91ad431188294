/**
 * What the layout is asked for one build: the rod in front of the grip, the builder's guides, loads and limits,
 * the ferrules kept free, the start.
 */
import type { AssembledBlank } from '../bench/assemble.ts';
import type { Bench } from '../bench/bench.ts';
import { type DiameterRow, diameterAt } from '../bench/diameter-profile.ts';
import { type FerruleZone, keepOutZones } from '../bench/ferrule-zones.ts';
import { type BlankTables, type FreeRod, freeRod } from '../bench/free-rod.ts';
import { arithmeticRule } from '../bench/start-list.ts';
import { type Guide, guideKindOf } from '../kinds/guides.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { type BlankTorsion, blankTorsion } from './blank-torsion.ts';
import type { Choices, ChosenGuide } from './choices.ts';
import { dressingOf, withDressing } from './finished-rod.ts';
import { guidesRound } from './guides-round.ts';
import { type LoadLadder, loadLadder } from './loads.ts';
import { isOnTop, limitsOf } from './usual-limits.ts';

export interface LayoutQuestion {
  rod: FreeRod;
  keepOut: FerruleZone[];
  loads: LoadLadder;
  /** Empty where the rule makes no list. */
  startFromTipM: readonly number[];
  /** Marks of the record; undefined until every guide has one. */
  ownFromTipM?: readonly number[];
  torsion: BlankTorsion;
  request: LayoutRequest & LadderRequest;
}

/** `tables` are those of the whole blank: fitted, or estimated. */
export function layoutQuestion(parts: {
  bench: Bench;
  choices: Choices;
  blank: AssembledBlank;
  diameters: readonly DiameterRow[];
  tables: BlankTables;
}): LayoutQuestion {
  const { bench, choices, blank, diameters, tables } = parts;
  const rod = freeRod(tables, blank.lengthM - bench.handle.gripFrontFromButtM);
  const keepOut = keepOutZones(blank, choices.ferruleClearM);
  const loads = loadLadder(choices, rod);
  const startFromTipM = startMarks(choices);
  const ownFromTipM = ownMarks(choices);
  const standIn = standInMarks(choices, startFromTipM);
  const marks = ownFromTipM ?? standIn;
  // at the start's places: the rod stays the same while marks move, and a ring's height by 0.1 mm at most
  const rings = ringsAndReel(bench, choices, choices.guides, standIn, diameters);
  const torsion = blankTorsion(bench, tables, blank.lengthM);
  const dressing = dressingOf({ bench, choices, blank, diameters }, standIn);
  const pinned = choices.guides.flatMap((guide, index) =>
    guide.pinned ? [{ index, fromTipM: marks[index] }] : [],
  );
  return {
    rod,
    keepOut,
    loads,
    startFromTipM,
    ownFromTipM,
    torsion,
    request: {
      rod,
      torsionShare: choices.spiral && torsion.share,
      ...rings,
      guides: { ...rings.guides, massesKg: withDressing(rings.guides.massesKg ?? [], dressing) },
      ladder: loads.ladder,
      limits: limitsOf(choices, rod.lengthM),
      ...(isOnTop(choices) && diameters.length > 0 ? { contact: { diameters } } : {}),
      firstFromTipM: marks[0],
      strippingFromTipM: marks[marks.length - 1],
      footM: choices.guides.map(({ lengthM }) => lengthM),
      keepOut: keepOut.map(({ fromTipM, toTipM }) => ({ fromTipM, toTipM })),
      pinned,
      intervals: choices.intervals,
      ...(startFromTipM.length === choices.guides.length ? { start: { fromTipM: startFromTipM } } : {}),
    },
  };
}

/** A ring's height is given from the blank's surface, and wanted from its axis at about where the guide stands. */
export function ringsAndReel(
  bench: Bench,
  choices: Choices,
  guides: readonly (Guide | ChosenGuide)[],
  marks: readonly number[],
  diameters: readonly DiameterRow[],
): Pick<LadderRequest, 'buttAngleRad' | 'reel' | 'guides' | 'tipTop'> {
  const { gripFrontFromButtM, reelFromButtM, reelOffsetM } = bench.handle;
  const heightsM = guides.map(
    ({ ringHeightM }, index) => ringHeightM + (diameterAt(diameters, marks[index]) ?? 0) / 2,
  );
  const round = guidesRound(choices, guides, heightsM);
  const spiral = round.length > 0;
  return {
    buttAngleRad: choices.buttAngleRad,
    reel: {
      alongM: reelFromButtM - gripFrontFromButtM,
      offsetM: reelOffsetM,
      ...(spiral ? { aroundRad: Math.PI } : {}),
    },
    guides: {
      count: guides.length,
      ringHeightsM: spiral ? round.map(({ ringHeightM }) => ringHeightM) : heightsM,
      massesKg: guides.map(({ massKg }) => massKg),
      ...frictionOf(guides),
      side: choices.side,
      ...(spiral ? { aroundRad: round.map(({ aroundRad }) => aroundRad) } : {}),
    },
    tipTop: {
      ringHeightM: choices.tipTop.ringHeightM,
      massKg: choices.tipTop.massKg,
      ...(spiral ? { aroundRad: 0 } : {}),
    },
  };
}

/** Nothing to say of a set in which nothing turns. */
function frictionOf(guides: readonly Guide[]): Pick<LadderRequest['guides'], 'frictionShares'> {
  const shares = guides.map(({ kind }) => guideKindOf(kind).frictionShare ?? 1);
  return shares.some((share) => share !== 1) ? { frictionShares: shares } : {};
}

function startMarks({ start }: Choices): readonly number[] {
  if (start.kind === 'list') return start.fromTipM;
  const rule = arithmeticRule(start);
  return rule.ok ? rule.fromTipM : [];
}

function ownMarks({ guides }: Choices): readonly number[] | undefined {
  const own = guides.flatMap(({ stationM }) => stationM ?? []);
  return own.length === guides.length ? own : undefined;
}

/** The start's marks, or where they do not fit the guides even ones between its ends. */
function standInMarks({ guides, start }: Choices, startFromTipM: readonly number[]): readonly number[] {
  if (startFromTipM.length === guides.length) return startFromTipM;
  const ends = start.kind === 'rule' ? [start.firstFromTipM, start.strippingFromTipM] : start.fromTipM;
  const [first, last] = [ends[0], ends[ends.length - 1]];
  return guides.map((_, index) => first + ((last - first) * index) / Math.max(1, guides.length - 1));
}
