/**
 * Places the guides for one blank: the largest reading over its limit (criteria.ts), over all loads of the ladder,
 * as small as it can be; then, among layouts within 2 % of that, the smoothest progression
 * of intervals. What counts and what does not: ladder.ts. Method and calibration: docs/theory-layout.md.
 */

import type { Finding } from '../finding.ts';
import { checkLayout } from './check-layout.ts';
import type { ByQuantity } from './criteria.ts';
import { anyClear } from './kept-free.ts';
import { type LadderReading, ladderDefaults, makeLadder, readLadder } from './ladder.ts';
import { onOneSide } from './ladder-in-space.ts';
import type { LadderLoad, LadderRequest, LayoutLimits } from './ladder-request.ts';
import { doubtsOf, statusOf } from './layout-doubts.ts';
import { layoutFound } from './layout-kinds.ts';
import {
  type Intervals,
  type LayoutRequest,
  rulesOf,
  type SettledLayout,
  settleLayout,
  smallestIntervalM,
} from './layout-request.ts';
import { type PlacedGuides, placeGuides } from './place-guides.ts';
import { freshRatiosAt, makeRatioProbe, type RatioProbe } from './ratios.ts';
import { startBreaks, whyImpossible } from './rule-breaks.ts';
import { type MarkSlack, slackCeiling, slackOfMarks } from './slack.ts';
import { unevennessOf } from './unevenness.ts';
import { type LayoutVerdict, layoutVerdict } from './verdict.ts';
import { type WorstPlace, worstValues } from './worst.ts';

/** The largest of each reading over all loads, and the largest ratio to its limit. */
export interface LayoutScore extends ByQuantity<number> {
  worst: number;
}
export interface LayoutFound {
  status: LadderReading['status'];
  /** Loads of the ladder, from 0, for which the status is not 'converged'. */
  lostLoads?: number[];
  fromTipM: number[];
  score: LayoutScore;
  worstAt: WorstPlace;
  startScore: LayoutScore;
  startWorstAt: WorstPlace;
  slackM: MarkSlack[];
  /** Least worst ratio found before smoothing, and what smoothing left: see unevenness.ts. */
  leastWorst: number;
  unevenness: number;
  verdict: LayoutVerdict;
  findings: Finding[];
  /** What was used. */
  limits: LayoutLimits;
  ladder: readonly LadderLoad[];
  intervals: Intervals;
  start: SettledLayout['start'];
}
export interface LayoutRefused {
  status: 'refused';
  findings: Finding[];
}
export type LayoutAnswer = LayoutFound | LayoutRefused;

/** A layout good enough to show, before the answer is complete. */
export interface LayoutProgress {
  stage: 'least' | 'smooth';
  fromTipM: readonly number[];
  worst: number;
}

/** `progress` hears of every better layout on the way, and of the smoothed one before its slack is known. */
export function layout(request: LayoutRequest, progress?: (soFar: LayoutProgress) => void): LayoutAnswer {
  return answered(request, ({ rough, fine, settled, startReading }) =>
    placeGuides({ rough, fine }, settled, startReading, (stage, { fromTipM, worst }) =>
      progress?.({ stage, fromTipM, worst }),
    ),
  );
}

/** The start as the answer, moved only as far as the rules asked for want it. */
export function keepStart(request: LayoutRequest): LayoutAnswer {
  return answered(request, ({ rough, settled }) => {
    const { start, keepOut: zones, halfFootM } = settled;
    const kept = startBreaks(settled).length === 0;
    const fromTipM = kept
      ? start.fromTipM
      : anyClear({ zones, halfFootM }, rulesOf(settled), start.fromTipM).best?.fromTipM;
    if (!fromTipM) return undefined;
    return { fromTipM, leastWorst: freshRatiosAt(rough, fromTipM).worst, cutShort: false };
  });
}

interface Asked {
  rough: RatioProbe;
  fine: RatioProbe;
  settled: SettledLayout;
  startReading: LadderReading;
}

function answered(request: LayoutRequest, place: (asked: Asked) => PlacedGuides | undefined): LayoutAnswer {
  const findings = checkLayout(request);
  if (findings.length > 0) return { status: 'refused', findings };
  const settled = settleLayout(request);
  if (!settled) {
    const { lengthM } = request.rod;
    return { status: 'refused', findings: [layoutFound('ladder', 'layout/no-usual-loads', { lengthM })] };
  }
  const whole: LadderRequest = { ...request, ladder: settled.ladder, limits: settled.limits };
  const ladder = makeLadder(whole, finalMesh);
  const startReading = readLadder(ladder, settled.start.fromTipM);
  const bending = settled.ladder.filter((_, load) => startReading.loads[load].status !== 'not-converged');
  const counted = { ...whole, ladder: bending };
  const rough = makeRatioProbe(makeLadder(counted, onOneSide(counted) ? ladderDefaults : roughInSpace));
  const fine = makeRatioProbe(makeLadder(counted, finalMesh));
  const placed = place({ rough, fine, settled, startReading });
  if (!placed) return { status: 'refused', findings: whyImpossible(settled) };
  const reading = readLadder(ladder, placed.fromTipM);
  const slackM = slackOfMarks(rough, placed.fromTipM, {
    ceiling: slackCeiling * freshRatiosAt(rough, placed.fromTipM).worst,
    leastIntervalM: settled.leastIntervalM,
    leastFirstM: smallestIntervalM,
    zones: settled.keepOut,
    halfFootM: settled.halfFootM,
  });
  return answerOf(settled, { reading, startReading, slackM, placed });
}

/** The answer is smoothed and scored on a finer mesh than the search uses. */
const finalMesh = { resolution: 240 };
/** In space a bend costs six times as much; the ratios are true to 0.2 % while searching. */
const roughInSpace = { resolution: 72 };

interface Outcome {
  reading: LadderReading;
  startReading: LadderReading;
  slackM: MarkSlack[];
  placed: PlacedGuides;
}

function answerOf(settled: SettledLayout, { reading, startReading, slackM, placed }: Outcome): LayoutFound {
  const breaks = startBreaks(settled);
  const { ladder, limits, intervals, start } = settled;
  return {
    ...statusOf(reading, startReading),
    fromTipM: placed.fromTipM,
    score: scoreOf(reading, limits),
    worstAt: reading.worstAt,
    startScore: scoreOf(startReading, limits),
    startWorstAt: startReading.worstAt,
    slackM,
    leastWorst: placed.leastWorst,
    unevenness: unevennessOf(placed.fromTipM),
    verdict: layoutVerdict(reading.worst, startReading.worst, breaks.length > 0),
    findings: [...breaks, ...doubtsOf(settled, reading, placed)],
    limits,
    ladder,
    intervals,
    start,
  };
}

function scoreOf({ worst, worstOf }: LadderReading, limits: LayoutLimits): LayoutScore {
  return { worst, ...worstValues(worstOf, limits) };
}
