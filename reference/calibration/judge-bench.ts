/** One simulated bench from its readings to its marks, and everything promised on the way held against the true rod. */

import { freeRod } from '../../src/engine/bench/free-rod.ts';
import { blanksThatFit } from '../../src/engine/flow/build-sureness.ts';
import { layoutFromBench } from '../../src/engine/flow/layout-from-bench.ts';
import { makeLadder, readLadder } from '../../src/engine/layout/ladder.ts';
import { keepStart, layout } from '../../src/engine/layout/layout.ts';
import type { LayoutRequest } from '../../src/engine/layout/layout-request.ts';
import { piecewiseLinear, valueAt } from '../../src/engine/numerics/piecewise-linear.ts';
import { type FitResult, fitStiffness } from '../../src/engine/stiffness/fit.ts';
import { mixtureBand } from '../../src/engine/stiffness/mixture-band.ts';
import type { FitRequest } from '../../src/engine/stiffness/request.ts';
import { inWords } from '../../test/support/in-words.ts';
import type { TrueBlank } from '../../test/support/simulated-bench.ts';
import { type Readings, readUnlikeBench } from '../../test/support/unlike-bench.ts';
import { type UnlikeKind, unlikeBlank } from '../../test/support/unlike-blanks.ts';
import { askedLayout, gripM } from './asked-layout.ts';
import { judgeWeightNeverHung, type WeightNeverHung } from './judge-weight-never-hung.ts';

export interface BenchRow {
  seed: number;
  kind: UnlikeKind;
  readings: Readings;
  moved: boolean;
  /** The start breaks a rule and cannot stay. */
  startBreaks: boolean;
  /** Largest ratio to a limit on the true rod: of the start, of the answer's marks, the least that there is. */
  start: number;
  ours: number;
  best: number;
  /** Promised: on the likeliest blank, and over the blanks that fit. */
  likeliest: number;
  expected: number;
  low: number;
  high: number;
  betterThanStart: number;
  /** Of the marks placed on the likeliest blank, made or not: on what share of blanks they lead; whether they do. */
  lead: { said: number; isTrue: boolean };
  costOfKeeping: number;
  /** Best places on the true rod less the marks, in standard deviations; the guides that are given left out. */
  marksOff: number[];
  markSigmaM: number;
  /** Of 60 places along the blank: share in the 95 % band, between the quartiles; mean width in ln EI; error, rms. */
  bandHeld: number;
  bandHalf: number;
  bandWidth: number;
  errorRms: number;
  /** A heavier weight foretold; undefined where none hung, or it bends the true rod too far. */
  neverHung?: WeightNeverHung;
  findings: string[];
}

/**
 * Undefined where on the true rod the start or the marks find no bend under some load. `asNoted`: what becomes of the
 * readings between eye and paper.
 */
export function judgeBench(
  seed: number,
  readings: Readings,
  asNoted: (bench: FitRequest) => FitRequest = (bench) => bench,
): BenchRow | undefined {
  const blank = unlikeBlank(seed);
  const bench = asNoted(readUnlikeBench(blank, readings, seed).request);
  const { rod, ...asked } = askedLayout(blank);
  const answer = layoutFromBench({ ...asked, bench, freeM: blank.lengthM - gripM });
  if (answer.status === 'refused') throw new Error(`bench ${seed}: ${inWords(answer.findings[0])}`);
  const truth = layout({ ...asked, rod });
  if (truth.status === 'refused') throw new Error(`bench ${seed}: ${inWords(truth.findings[0])}`);
  const onTruth = makeLadder({ ...asked, rod });
  const { sureness } = answer;
  const fit = fitStiffness(bench);
  if (fit.answer.status === 'refused') throw new Error(`bench ${seed}: no answer`);
  const placed = placedBy(answer, { ...asked, rod: freeRod(fit.answer, blank.lengthM - gripM) });
  const worsts = [answer.fromTipM, asked.start.fromTipM, placed.ours, placed.theirs].map((marks) => {
    const reading = readLadder(onTruth, marks);
    return reading.status === 'not-converged' ? Number.NaN : reading.worst;
  });
  if (worsts.some(Number.isNaN)) return undefined;
  const [ours, start, placedWorst, heldAgainst] = worsts;
  const marksOff = truth.fromTipM.map((at, i) => (at - answer.fromTipM[i]) / sureness.markSigmaM[i]);
  return {
    seed,
    kind: blank.kind,
    readings,
    moved: !answer.findings.some(({ path }) => path === 'start'),
    startBreaks: answer.verdict.startBreaks,
    start,
    ours,
    best: truth.leastWorst,
    likeliest: answer.score.worst,
    ...sureness.worst,
    betterThanStart: sureness.betterThanStart,
    lead: { said: placed.said, isTrue: placedWorst < heldAgainst * (1 - 1e-6) },
    costOfKeeping: sureness.costOfKeeping,
    marksOff: marksOff.slice(1, -1),
    markSigmaM: mean(sureness.markSigmaM.slice(1, -1)),
    ...bandOf(fit, blank),
    neverHung: neverHungOn(fit, bench, blank),
    findings: fit.answer.findings.map(({ path }) => path),
  };
}

interface Placed {
  said: number;
  /** The marks, and what they are held against. */
  ours: readonly number[];
  theirs: readonly number[];
}

/** Of the marks placed on the likeliest blank, whether they are the answer or the start is. */
function placedBy(
  { findings, fromTipM, sureness }: Extract<ReturnType<typeof layoutFromBench>, { fromTipM: number[] }>,
  request: LayoutRequest & { start: { fromTipM: readonly number[] } },
): Placed {
  const stays = findings.find(({ code }) => code === 'layout/start-stays')?.values;
  if (!stays) return { said: sureness.betterThanStart, ours: fromTipM, theirs: request.start.fromTipM };
  const [placed, kept] = [layout(request), keepStart(request)];
  if (placed.status === 'refused' || kept.status === 'refused')
    throw new Error('a layout refused that was found');
  return { said: Number(stays.better) / Number(stays.of), ours: placed.fromTipM, theirs: kept.fromTipM };
}

function neverHungOn({ answer, posterior }: FitResult, bench: FitRequest, blank: TrueBlank) {
  if (answer.status === 'refused' || !posterior) return undefined;
  const freeLengthM = blank.lengthM - gripM;
  return judgeWeightNeverHung({
    blank,
    bench,
    tables: answer,
    blanksThatFit: blanksThatFit(posterior),
    freeLengthM,
  });
}

function bandOf(
  { answer, posterior }: FitResult,
  { lengthM, stiffnessNm2 }: TrueBlank,
): Pick<BenchRow, 'bandHeld' | 'bandHalf' | 'bandWidth' | 'errorRms'> {
  if (answer.status === 'refused' || !posterior) throw new Error('a bench without an answer');
  const at = answer.stiffness.map(({ fromTipM }) => fromTipM);
  const column = (key: 'EINm2' | 'lowNm2' | 'highNm2') =>
    piecewiseLinear(
      at,
      answer.stiffness.map((row) => Math.log(row[key])),
    );
  const [middle, low, high] = [column('EINm2'), column('lowNm2'), column('highNm2')];
  const [lower, upper] = mixtureBand(posterior.drawing.mixture, [0.25, 0.75]).map((quartile) =>
    piecewiseLinear(at, quartile),
  );
  const places = Array.from({ length: 60 }, (_, i) => {
    const place = 0.05 + (i / 59) * (lengthM - 0.07);
    const true_ = Math.log(stiffnessNm2(place));
    const within = (from: typeof low, to: typeof low) =>
      true_ >= valueAt(from, place) && true_ <= valueAt(to, place);
    return {
      off: true_ - valueAt(middle, place),
      width: valueAt(high, place) - valueAt(low, place),
      held: within(low, high),
      inHalf: within(lower, upper),
    };
  });
  return {
    bandHeld: mean(places.map(({ held }) => Number(held))),
    bandHalf: mean(places.map(({ inHalf }) => Number(inHalf))),
    bandWidth: mean(places.map(({ width }) => width)),
    errorRms: Math.sqrt(mean(places.map(({ off }) => off * off))),
  };
}

export function mean(values: readonly number[]): number {
  return values.reduce((sum, value) => sum + value, 0) / values.length;
}
