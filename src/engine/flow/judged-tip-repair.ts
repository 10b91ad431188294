/**
 * A broken tip judged by how this blank bends: every spread of the upper guides that stands (repair/broken-tip.ts) and
 * the guides left where they are, each read under the loads of the ladder on the blank cut at the break. What differs
 * is read from the tip to the first guide that stays; below it the rod is as it was. Cutting wraps costs, so a spread is
 * proposed only where the break upset the spacing, the tip stands beyond a limit or worse than it was, and the spread
 * clearly mends it.
 */
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { largestOf, type WorstPlace, worstOfLoad, worstOfPlaces } from '../layout/worst.ts';
import { type TipRepair, tipRepairs } from '../repair/broken-tip.ts';
import { cutRod } from '../repair/shortened-rod.ts';

export interface TipRepairQuestion {
  /** The rod as it was, with its guides, loads and limits. */
  request: LadderRequest;
  fromTipM: readonly number[];
  lostM: number;
}
export interface JudgedRepair {
  repair: TipRepair;
  /** Of the whole rod, and from the tip to the first guide that stays. */
  worst: WorstPlace;
  atTip: WorstPlace;
}
export interface JudgedTipRepairs {
  /** From the tip to the same guide on the rod as it was. */
  before: WorstPlace;
  leave: JudgedRepair;
  /** What mends the tip best without making the rod worse; none where no spread stands or bends. */
  move?: JudgedRepair;
  proposed: 'leave' | 'move';
}

/** Wraps are cut where the tip is worse than it was, and for a gain, by this share or more: our choice. */
export const worthCutting = 0.05;

/** Undefined where no guide is left, or the cut rod finds no bend. */
export function judgeTipRepairs(question: TipRepairQuestion): JudgedTipRepairs | undefined {
  const { request, fromTipM, lostM } = question;
  if (!(request.rod.lengthM - lostM > 0.3)) return undefined;
  const { leave, spreads, upset } = tipRepairs({ lostM, guidesFromTipM: fromTipM });
  const cut = { ...request, rod: cutRod(request.rod, lostM) };
  const left = read(cut, keptOf(leave));
  const was = read(request, placesOf(fromTipM));
  if (!left || !was) return undefined;
  const moves = spreads.flatMap((repair): (JudgedRepair & { anchor: number })[] => {
    const moved = read(cut, keptOf(repair));
    const anchor = repair.guides.findIndex(({ kind }) => kind === 'stays');
    if (!moved || anchor < 0 || moved.worst.ratio > 1.005 * left.worst.ratio) return [];
    return [{ repair, anchor, worst: moved.worst, atTip: moved.downTo(anchor) }];
  });
  moves.sort(
    (a, b) => a.atTip.ratio / left.downTo(a.anchor).ratio - b.atTip.ratio / left.downTo(b.anchor).ratio,
  );
  const [best] = moves;
  const anchor = best ? best.anchor : fromTipM.length - 1;
  const [before, atTip] = [was.downTo(anchor), left.downTo(anchor)];
  const ails = upset && (atTip.ratio > 1 || atTip.ratio > (1 + worthCutting) * before.ratio);
  const mends = best !== undefined && best.atTip.ratio < (1 - worthCutting) * atTip.ratio;
  return {
    before,
    leave: { repair: leave, worst: left.worst, atTip },
    ...(best ? { move: { repair: best.repair, worst: best.worst, atTip: best.atTip } } : {}),
    proposed: ails && mends ? 'move' : 'leave',
  };
}

interface KeptGuide {
  guide: number;
  at: number;
}
function placesOf(fromTipM: readonly number[]): KeptGuide[] {
  return fromTipM.map((at, guide) => ({ guide, at }));
}
function keptOf({ guides }: TipRepair): KeptGuide[] {
  return guides.flatMap((fate, guide) => ('fromTipM' in fate ? [{ guide, at: fate.fromTipM }] : []));
}

interface RodRead {
  worst: WorstPlace;
  /** From the tip to the ring of a guide, itself counted. */
  downTo(guide: number): WorstPlace;
}

/** The rings that are on the rod, at their places. */
function read(request: LadderRequest, kept: readonly KeptGuide[]): RodRead | undefined {
  if (kept.length === 0) return undefined;
  const { limits } = request;
  const reading = readLadder(
    makeLadder({ ...request, guides: onlyThese(request.guides, kept) }),
    kept.map(({ at }) => at),
  );
  if (reading.status === 'not-converged') return undefined;
  return {
    worst: reading.worstAt,
    downTo(guide) {
      const ring = 1 + kept.findIndex((one) => one.guide === guide);
      const parts = reading.loads.map(({ rings, spans }) => ({
        rings: rings.slice(0, ring + 2),
        spans: spans.slice(0, ring),
      }));
      return largestOf(worstOfPlaces(parts.map((part, load) => worstOfLoad(part, limits, load))));
    },
  };
}

function onlyThese(guides: LadderRequest['guides'], kept: readonly KeptGuide[]): LadderRequest['guides'] {
  const only = (values: readonly number[] | undefined) => values && kept.map(({ guide }) => values[guide]);
  return {
    ...guides,
    count: kept.length,
    ringHeightsM: kept.map(({ guide }) => guides.ringHeightsM[guide]),
    massesKg: only(guides.massesKg),
    aroundRad: only(guides.aroundRad),
  };
}
