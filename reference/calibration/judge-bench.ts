/** One simulated bench from its readings to its marks, and everything promised on the way held against the true rod. */

import { blanksThatFit } from '../../src/engine/flow/build-sureness.ts';
import { layoutFromBench } from '../../src/engine/flow/layout-from-bench.ts';
import { makeLadder, readLadder } from '../../src/engine/layout/ladder.ts';
import { layout } from '../../src/engine/layout/layout.ts';
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
  const [ours, start] = [answer.fromTipM, asked.start.fromTipM].map((marks) => readLadder(onTruth, marks));
  if (ours.status === 'not-converged' || start.status === 'not-converged') return undefined;
  const { sureness } = answer;
  const marksOff = truth.fromTipM.map((at, i) => (at - answer.fromTipM[i]) / sureness.markSigmaM[i]);
  const fit = fitStiffness(bench);
  return {
    seed,
    kind: blank.kind,
    readings,
    moved: !answer.findings.some(({ path }) => path === 'start'),
    start: start.worst,
    ours: ours.worst,
    best: truth.leastWorst,
    likeliest: answer.score.worst,
    ...sureness.worst,
    betterThanStart: sureness.betterThanStart,
    costOfKeeping: sureness.costOfKeeping,
    marksOff: marksOff.slice(1, -1),
    markSigmaM: mean(sureness.markSigmaM.slice(1, -1)),
    ...bandOf(fit, blank),
    neverHung: neverHungOn(fit, bench, blank),
    findings: fit.answer.findings.map(({ path }) => path),
  };
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
