import { expect, test } from 'vitest';
import { fitOfSeries } from '../../../test/support/fit-of-series.ts';
import {
  fullPlan,
  placeOn,
  randomBlank,
  readBench,
  type TrueBlank,
  trueCurve,
} from '../../../test/support/simulated-bench.ts';
import { halfPlan, randomSeries } from '../../../test/support/simulated-series.ts';
import { bend } from '../bend/bend.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import type { FitAnswer, FitSolved } from '../stiffness/request.ts';
import { rowsOf } from '../stiffness/rows.ts';
import { chiSquareQuantile } from './innovation.ts';
import { type LearntSeries, learnSeries, learnSeriesSteps } from './learn-series.ts';
import { type SeriesMember, seriesMember } from './member.ts';

/** More series under SERIES=60 (npm test -- --long); the same first ones stand always. */
const series = Number(process.env.SERIES ?? 2);
const sigmaM = 0.002;

function learnt(blanks: readonly TrueBlank[], seed: number): LearntSeries {
  const members = blanks.map((blank, i) =>
    seriesMember(`b${i}`, `blank ${i + 1}`, readBench(blank, fullPlan(sigmaM), seed + i, 0).request),
  );
  return learnSeries(members.filter((member): member is SeriesMember => member !== undefined));
}

/** Mean width of the 95 % band of ln EI, and how much of it holds the truth. */
function sureness(answer: FitAnswer, blank: TrueBlank): { width: number; held: number; error: number } {
  const { stiffness } = answer as FitSolved;
  const rows = stiffness.filter(({ fromTipM }) => fromTipM < 0.95 * blank.lengthM);
  const mean = (of: (row: (typeof rows)[number]) => number) =>
    rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
  const truth = (s: number) => blank.stiffnessNm2(s);
  return {
    width: mean(({ lowNm2, highNm2 }) => Math.log(highNm2 / lowNm2)),
    held: mean(({ fromTipM, lowNm2, highNm2 }) =>
      truth(fromTipM) >= lowNm2 && truth(fromTipM) <= highNm2 ? 1 : 0,
    ),
    error: Math.sqrt(mean(({ fromTipM, EINm2 }) => Math.log(EINm2 / truth(fromTipM)) ** 2)),
  };
}

/** Largest distance of the told bend from the true one under a load never hung, as a share of the length. */
function bendError(answer: FitAnswer, blank: TrueBlank): number {
  const { stiffness, massPerLength } = answer as FitSolved;
  const { lengthM } = blank;
  const buttAngleRad = Math.PI / 4;
  const truth = trueCurve(blank, {
    buttAngleRad,
    clampFromTipM: lengthM,
    turnedRad: 0,
    hung: [{ fromTipM: 0, massKg: 0.25 }],
  });
  const told = bend({
    rod: { lengthM, stiffness, massPerLength },
    buttAngleRad,
    load: { tip: { xN: 0, yN: -0.25 * 9.80665 } },
  });
  const off = told.points.map((point) => {
    const place = placeOn(truth, point.fromTipM);
    return Math.hypot(point.xM - place.xM, point.yM - place.yM) / lengthM;
  });
  return Math.max(...off);
}

test(
  `after five blanks half the readings are as sure as all of them were (${series} invented series)`,
  () => {
    const rows = Array.from({ length: series }, (_, k) => {
      const blanks = randomSeries(100 + k, 6);
      const known = learnt(blanks.slice(0, 5), 9000 + 10 * k);
      const next = blanks[5];
      const full = fitStiffness(readBench(next, fullPlan(sigmaM), 7000 + k, 0).request).answer;
      const halfBench = readBench(next, halfPlan(sigmaM), 8000 + k, 0).request;
      const half = fitStiffness(halfBench).answer;
      const lent = fitOfSeries(halfBench, known);
      return {
        full: { ...sureness(full, next), bend: bendError(full, next) },
        half: { ...sureness(half, next), bend: bendError(half, next) },
        lent: { ...sureness(lent.answer, next), bend: bendError(lent.answer, next) },
        used: lent.series.used,
      };
    });
    const mean = (of: (row: (typeof rows)[number]) => number) =>
      rows.reduce((sum, row) => sum + of(row), 0) / rows.length;
    const table = (['full', 'half', 'lent'] as const).map((which) => ({
      which,
      width: mean((row) => row[which].width).toFixed(3),
      held: mean((row) => row[which].held).toFixed(3),
      error: mean((row) => row[which].error).toFixed(3),
      bend: mean((row) => row[which].bend).toFixed(5),
    }));
    console.info(
      `series used ${rows.filter(({ used }) => used).length} of ${rows.length}`,
      JSON.stringify(table),
    );
    expect(mean((row) => row.lent.width)).toBeLessThan(mean((row) => row.full.width));
    expect(mean((row) => row.lent.error)).toBeLessThan(1.1 * mean((row) => row.full.error));
    expect(mean((row) => row.lent.held)).toBeGreaterThan(0.85);
  },
  20_000 + 20_000 * series,
);

test('a blank unlike its series is noticed and read by itself', () => {
  const known = learnt(randomSeries(11, 4), 300);
  const odd = randomSeries(11, 1)[0];
  const stiff: TrueBlank = { ...odd, stiffnessNm2: (s) => 1.7 * odd.stiffnessNm2(s) };
  const bench = readBench(stiff, halfPlan(sigmaM), 77, 0).request;
  const { answer, series: use } = fitOfSeries(bench, known);
  expect(use.innovation?.verdict).toBe('unlike');
  expect(use.used).toBe(false);
  expect(use).toMatchObject({ used: false, why: { code: 'series/unlike' } });
  expect(answer).toEqual(fitStiffness(bench).answer);
});

test('a blank of another length is not held against the series', () => {
  const known = learnt(randomSeries(11, 2), 300);
  const other = readBench(randomBlank(12, { sweepSigmaPerM: 0 }), halfPlan(sigmaM), 5, 0).request;
  const { series: use } = fitOfSeries(other, known);
  expect(use).toMatchObject({ used: false, innovation: undefined });
});

test('a member that differs from the others is told apart from them; steps lead to the same as one go', () => {
  const blanks = randomSeries(21, 5);
  const odd: TrueBlank = { ...blanks[2], stiffnessNm2: (s) => 0.55 * blanks[2].stiffnessNm2(s) };
  const members = [blanks[0], blanks[1], odd, blanks[3], blanks[4]].map((blank, i) =>
    seriesMember(`b${i}`, `b${i}`, readBench(blank, fullPlan(sigmaM), 40 + i, 0).request),
  ) as SeriesMember[];
  const found = learnSeries(members);
  const ratio = found.members.map(
    ({ againstOthers }) => (againstOthers?.chiSquare ?? 0) / (againstOthers?.degrees ?? 1),
  );
  expect(ratio.indexOf(Math.max(...ratio))).toBe(2);
  const shares: number[] = [];
  const steps = learnSeriesSteps(members);
  let step = steps.next();
  while (!step.done) {
    shares.push(step.value);
    step = steps.next();
  }
  expect(step.value).toEqual(found);
  expect(shares).toEqual(shares.toSorted((a, b) => a - b));
  expect(shares.length).toBeGreaterThan(5);
});

test('of one blank alone the series says what that blank says, widened by how blanks differ', () => {
  const [blank] = randomSeries(31, 1);
  const bench = readBench(blank, fullPlan(sigmaM), 3, 0).request;
  const { prior, spread, meanUnsure } = learnt([blank], 3);
  const alone = fitStiffness(bench).answer as FitSolved;
  const fine = rowsOf(blank.lengthM).fine;
  for (const i of [20, 40, 60, 75]) {
    expect(fine[i]).toBeCloseTo(alone.stiffness[i].fromTipM, 9);
    expect(Math.abs(prior.mean[i] - Math.log(alone.stiffness[i].EINm2))).toBeLessThan(0.12);
    expect(meanUnsure[i]).toBeGreaterThan(0.9 * spread[i]);
  }
});

// NIST/SEMATECH e-Handbook of Statistical Methods, 1.3.6.7.4: upper critical values of chi-square.
test.each([
  [1, 6.635],
  [4, 13.277],
  [10, 23.209],
  [30, 50.892],
])('the 99 %% point of chi-square with %i degrees', (degrees, published) => {
  expect(chiSquareQuantile(degrees, 2.326)).toBeCloseTo(published, degrees === 1 ? 0 : 1);
});
