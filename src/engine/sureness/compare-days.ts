/**
 * The same blank measured on two days with clampings of their own: does the bench repeat?
 *
 * Each day's set-ups are fitted by themselves and the guides placed on each day's blank. A mark repeats where the
 * days' best places lie no further apart than the mark may move without harm (its slack, layout/slack.ts). Since a
 * best place may wander where it hardly matters, what one day's marks cost on the other day's blank, and how far
 * apart the tip hangs under every load, stand beside it.
 */
import { type BlankTables, freeRod } from '../bench/free-rod.ts';
import { type Finding, type Reason, reasonsOf } from '../finding.ts';
import { makeLadder, readLadder } from '../layout/ladder.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { smallestIntervalM } from '../layout/layout-request.ts';
import { makeRatioProbe } from '../layout/ratios.ts';
import { type MarkSlack, slackCeiling, slackOfMarks } from '../layout/slack.ts';
import { fit } from '../stiffness/fit.ts';
import type { FitRequest, FitSolved } from '../stiffness/request.ts';
import { placeAnew } from './mark-spread.ts';

export interface DaysQuestion {
  days: readonly [DayBench, DayBench];
  /** What the marks are placed for; its rod gives the free length alone. */
  request: LayoutRequest & LadderRequest;
  /** Where the search starts. */
  marksFromTipM: readonly number[];
}
export interface DayBench {
  name: string;
  fit: FitRequest;
}
export interface RepeatedMark {
  /** Best place on each day. */
  fromTipM: [number, number];
  /** The smaller room of the first day's mark towards the second's. */
  slackM: number;
  within: boolean;
}
export interface DaysCompared {
  status: 'compared';
  marks: RepeatedMark[];
  repeated: number;
  /** Per load: distance between the tips. */
  tipApartM: number[];
  /** Share by which the first day's marks are worse on the second day's blank than its own best, and the reverse. */
  costOfOther: [number, number];
  /** Stations at which the days' 95 % bands of stiffness do not meet, as a share of the blank. */
  bandsApart: number;
}
export type DaysAnswer =
  | DaysCompared
  | { status: 'not-compared'; day?: string; reason: Reason | undefined; findings: Finding[] };

/** Why two days cannot be held side by side. */
export interface DaysKinds {
  'days/refused': Record<string, never>;
  'days/no-bend': Record<string, never>;
}
const daysReason = reasonsOf<DaysKinds>();

/** Two fits and two placings: a matter of seconds. */
export function compareDays({ days, request, marksFromTipM }: DaysQuestion): DaysAnswer {
  const fits = days.map((day) => fit(day.fit));
  for (const [i, answer] of fits.entries()) {
    if (answer.status === 'converged') continue;
    const reason = answer.status === 'refused' ? daysReason('days/refused', {}) : answer.reason;
    return { status: 'not-compared', day: days[i].name, reason, findings: answer.findings };
  }
  const solved = fits as [FitSolved, FitSolved];
  const placed = solved.map((blank) => placeAnew(onBlank(request, blank, marksFromTipM)));
  const [first, second] = placed;
  if (!first || !second) {
    return { status: 'not-compared', reason: daysReason('days/no-bend', {}), findings: [] };
  }
  const slack = slackOn(onBlank(request, solved[0], marksFromTipM), first.fromTipM);
  const marks = first.fromTipM.map((at, i) => repeatedMark(at, second.fromTipM[i], slack[i]));
  return {
    status: 'compared',
    marks,
    repeated: marks.filter(({ within }) => within).length,
    tipApartM: tipsApart(request, solved, marksFromTipM),
    costOfOther: [
      costOf(request, solved[1], first.fromTipM, second.worst),
      costOf(request, solved[0], second.fromTipM, first.worst),
    ],
    bandsApart: bandsApart(solved),
  };
}

function onBlank(request: DaysQuestion['request'], tables: BlankTables, start: readonly number[]) {
  const rod = freeRod(tables, request.rod.lengthM);
  return { ...request, rod, start: { fromTipM: start } };
}

/** A rounding of the search, below which two places are one. */
const sameM = 1e-3;

function repeatedMark(first: number, second: number, { towardsTip, towardsButt }: MarkSlack): RepeatedMark {
  const slackM = second < first ? towardsTip : towardsButt;
  return { fromTipM: [first, second], slackM, within: Math.abs(second - first) <= Math.max(slackM, sameM) };
}

function slackOn(request: DaysQuestion['request'], fromTipM: readonly number[]): MarkSlack[] {
  const probe = makeRatioProbe(makeLadder(request));
  const halfFootM = fromTipM.map((_, i) => (request.footM?.[i] ?? 0) / 2);
  const { worst } = readLadder(makeLadder(request), fromTipM);
  return slackOfMarks(probe, fromTipM, {
    ceiling: slackCeiling * worst,
    leastIntervalM: fromTipM.slice(1).map((at, i) => Math.min(smallestIntervalM, at - fromTipM[i])),
    leastFirstM: Math.min(smallestIntervalM, fromTipM[0]),
    zones: request.keepOut ?? [],
    halfFootM,
  });
}

function tipsApart(
  request: DaysQuestion['request'],
  solved: readonly [FitSolved, FitSolved],
  marks: readonly number[],
): number[] {
  const [a, b] = solved.map((blank) => readLadder(makeLadder(onBlank(request, blank, marks)), marks).loads);
  return a.map(({ xM, yM }, load) => Math.hypot(xM[0] - b[load].xM[0], yM[0] - b[load].yM[0]));
}

function costOf(
  request: DaysQuestion['request'],
  blank: FitSolved,
  marks: readonly number[],
  best: number,
): number {
  const { worst } = readLadder(makeLadder(onBlank(request, blank, marks)), marks);
  return Math.max(0, worst / best - 1);
}

/** Where they differ by more than both ± together, by the half band that faces the other day. */
function bandsApart([a, b]: readonly [FitSolved, FitSolved]): number {
  const apart = a.stiffness.filter((row, i) => {
    const other = b.stiffness[i];
    const [lower, upper] = row.EINm2 < other.EINm2 ? [row, other] : [other, row];
    const reach = Math.hypot(Math.log(lower.highNm2 / lower.EINm2), Math.log(upper.EINm2 / upper.lowNm2));
    return Math.log(upper.EINm2 / lower.EINm2) > reach;
  });
  return apart.length / a.stiffness.length;
}
