/**
 * Sixty simulated benches, straight and bowed, the truth by shooting (test/support/simulated-bench.ts): what a fit
 * must be worth before a builder leans on it, and whether its stated ± are true. Invented blanks; no real one is part
 * of this. More benches in a long run: BENCHES=200.
 */
import { describe, expect, test } from 'vitest';
import {
  type Curve,
  fullPlan,
  placeOn,
  randomBlank,
  readBench,
  type SetupPlan,
  type SimulatedBench,
  shortPlan,
  trueCurve,
  turnedPlan,
} from '../../../test/support/simulated-bench.ts';
import { bend } from '../bend/bend.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { sameScale } from './draw-states.ts';
import { fitStiffness } from './fit.ts';
import { mixtureBand } from './mixture-band.ts';
import { type Posterior, samplePosterior } from './posterior.ts';
import type { FitSolved } from './request.ts';

const buttAngleRad = Math.PI / 4;
const neverHungKg = 0.25;

function judged({ blank, request }: SimulatedBench) {
  const fitted = fitStiffness(request);
  const answer = fitted.answer as FitSolved;
  const { lengthM } = blank;
  const { stiffness, massPerLength, restCurvature } = answer;
  const told = bend({
    rod: { lengthM, stiffness, massPerLength, restCurvature },
    buttAngleRad,
    load: { tip: { xN: 0, yN: -neverHungKg * 9.80665 } },
  });
  const hung = [{ fromTipM: 0, massKg: neverHungKg }];
  const truth = trueCurve(blank, { buttAngleRad, clampFromTipM: lengthM, turnedRad: 0, hung });
  const off = told.points.map((point) => {
    const place = placeOn(truth, point.fromTipM);
    return Math.hypot(point.xM - place.xM, point.yM - place.yM);
  });
  const column = (key: 'EINm2' | 'lowNm2' | 'highNm2') =>
    piecewiseLinear(
      stiffness.map(({ fromTipM }) => fromTipM),
      stiffness.map((row) => row[key]),
    );
  const [middle, low, high] = [column('EINm2'), column('lowNm2'), column('highNm2')];
  const stations = Array.from({ length: 60 }, (_, i) => 0.05 + (i / 59) * (lengthM - 0.07));
  const held = stations.filter((at) => {
    const true_ = blank.stiffnessNm2(at);
    return true_ >= valueAt(low, at) && true_ <= valueAt(high, at);
  });
  const posterior = fitted.posterior as Posterior;
  const [lower, upper] = mixtureBand(posterior.drawing.mixture, [0.25, 0.75]).map((quartile) =>
    piecewiseLinear(posterior.rows.fine, quartile),
  );
  const heldHalf = stations.filter((at) => {
    const log = Math.log(blank.stiffnessNm2(at));
    return log >= valueAt(lower, at) && log <= valueAt(upper, at);
  });
  const squares = stations.map((at) => (valueAt(middle, at) / blank.stiffnessNm2(at) - 1) ** 2);
  return {
    unseenShare: Math.max(...off) / lengthM,
    heldShare: held.length / stations.length,
    heldHalfShare: heldHalf.length / stations.length,
    flagsOff: flagsOff(posterior, lengthM, truth),
    stiffnessRms: Math.sqrt(mean(squares)),
  };
}
/** Heights of tip and three flags under the load never hung, in standard deviations of blanks drawn at one scale. */
function flagsOff(posterior: Posterior, lengthM: number, truth: Curve): number[] {
  const flags = [0, 1 / 9, 1 / 4, 1 / 2].map((share) => share * lengthM);
  const load = { tip: { xN: 0, yN: -neverHungKg * 9.80665 } };
  const drawn = samplePosterior({ posterior }, 30, 3, sameScale).map((rod) => {
    const { points } = bend({ rod, buttAngleRad, load }, { resolution: 80 });
    const height = piecewiseLinear(
      points.map(({ fromTipM }) => fromTipM),
      points.map(({ yM }) => yM),
    );
    return flags.map((flag) => valueAt(height, flag));
  });
  return flags.map((flag, i) => {
    const heights = drawn.map((each) => each[i]);
    const middle = mean(heights);
    const sigma = Math.sqrt(heights.reduce((sum, at) => sum + (at - middle) ** 2, 0) / (heights.length - 1));
    return (placeOn(truth, flag).yM - middle) / sigma;
  });
}
const mean = (values: readonly number[]) => values.reduce((sum, value) => sum + value, 0) / values.length;

const median = (values: readonly number[]) => values.toSorted((a, b) => a - b)[values.length >> 1];

const kinds: { name: string; bowed: boolean; plan(lengthM: number): SetupPlan[] }[] = [
  { name: 'eight flags, ±1 mm', bowed: false, plan: () => fullPlan(0.001) },
  { name: 'eight flags, ±2 mm', bowed: false, plan: () => fullPlan(0.002) },
  { name: 'eight flags, ±3 mm', bowed: false, plan: () => fullPlan(0.003) },
  { name: 'short protocol', bowed: false, plan: shortPlan },
  { name: 'bowed, turned half over', bowed: true, plan: () => turnedPlan(0.0015) },
];
const benches = Number(process.env.BENCHES ?? 60);
const results = Array.from({ length: benches }, (_, i) => {
  const seed = i + 1;
  const kind = kinds[i % kinds.length];
  const sweepSigmaPerM = kind.bowed ? 0.02 : 0;
  const blank = randomBlank(seed, { sweepSigmaPerM });
  return { kind, ...judged(readBench(blank, kind.plan(blank.lengthM), seed + 1000, sweepSigmaPerM)) };
});
type Result = (typeof results)[number];
const straight = results.filter(({ kind }) => !kind.bowed);
const bowed = results.filter(({ kind }) => kind.bowed);

describe('simulated benches', () => {
  test.each(kinds)('$name: the 95 %% band holds the truth on 85 to 99.5 %% of the blank', ({ name }) => {
    const own = results.filter(({ kind }) => kind.name === name);
    const held = mean(own.map(({ heldShare }) => heldShare));
    expect(own.length).toBeGreaterThanOrEqual(12);
    expect(held).toBeGreaterThanOrEqual(0.85);
    expect(held).toBeLessThanOrEqual(0.995);
  });
  test('a straight blank: a load never hung within 0.5 % of length on ten of twelve, 0.75 % on 99 of 100', () => {
    const within = straight.filter(({ unseenShare }) => unseenShare <= 0.005).length;
    expect(within).toBeGreaterThanOrEqual((10 / 12) * straight.length);
    const nearly = straight.filter(({ unseenShare }) => unseenShare <= 0.0075).length;
    // of these 48 one is missed: a false alarm (a flag 26 mm off, evidence 9.9) sets it right wrongly
    expect(nearly).toBeGreaterThanOrEqual(Math.floor(0.99 * straight.length));
  });
  test('a bowed blank read turned half over: within 0.5 % in the median', () => {
    expect(median(bowed.map(({ unseenShare }) => unseenShare))).toBeLessThanOrEqual(0.005);
  });
  // 10.6 % here, 10.4 % over 240 straight blanks, 12.9 % over 60 bowed ones
  test('stiffness along a straight blank errs by 12 % at most', () => {
    expect(mean(straight.map(({ stiffnessRms }) => stiffnessRms))).toBeLessThanOrEqual(0.12);
  });
  test('the short protocol: within 0.4 % in the median', () => {
    const short = results.filter(({ kind }) => kind.name === 'short protocol');
    expect(median(short.map(({ unseenShare }) => unseenShare))).toBeLessThanOrEqual(0.004);
  });
  // tables of Student's t, three degrees, 0.765 and 3.182, made narrower by √3
  const studentReach = [0.4416, 1.837];
  // On fresh benches, seeds 3001 to 3120: 38 and 93 % of the stiffness; heights by 200 drawn blanks, 3001 to 3060: 40 and 95 %.
  // Fewer than half: the shape was chosen on blanks that are mostly smoother (decision 37).
  test.each([
    { of: 'stiffness', shares: (of: Result) => [of.heldHalfShare, of.heldShare] },
    {
      of: 'heights under a load never hung',
      shares: ({ flagsOff: off }: Result) =>
        studentReach.map((reach) => off.filter((by) => Math.abs(by) <= reach).length / off.length),
    },
  ])('$of: 35 to 60 %% of it lies between the quartiles, 90 to 99 %% within the 95 %% band', ({ shares }) => {
    const half = mean(results.map((result) => shares(result)[0]));
    const most = mean(results.map((result) => shares(result)[1]));
    expect(half).toBeGreaterThanOrEqual(0.35);
    expect(half).toBeLessThanOrEqual(0.6);
    expect(most).toBeGreaterThanOrEqual(0.9);
    expect(most).toBeLessThanOrEqual(0.99);
  });
});
