/**
 * Benches that make little sense: the answer is a wide band or a clear no, never a narrow wrong one. Simulated
 * (test/support); `held` is the share of the blank on which the 95 % band holds the true stiffness.
 */
import { describe, expect, test } from 'vitest';
import { randomBlank, readBench, type TrueBlank } from '../../../test/support/simulated-bench.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { fitStiffness } from './fit.ts';
import type { FitClampSetup, FitRequest, FitTest } from './request.ts';

const plan = { stationsM: [0, 0.3, 0.7, 1.2], hungKg: [0, 0.05, 0.1], sigmaM: 0.0015 };
const benchOf = (blank: TrueBlank, seed: number, readings = plan) =>
  readBench(blank, [readings], seed + 1000, 0).request;

function judged(request: FitRequest, blank: TrueBlank) {
  const { answer } = fitStiffness(request);
  if (answer.status === 'refused') return { ...answer, held: 1, width: Number.POSITIVE_INFINITY };
  const column = (key: 'lowNm2' | 'highNm2') =>
    piecewiseLinear(
      answer.stiffness.map(({ fromTipM }) => fromTipM),
      answer.stiffness.map((row) => Math.log(row[key])),
    );
  const [low, high] = [column('lowNm2'), column('highNm2')];
  const places = Array.from({ length: 40 }, (_, i) => 0.05 + (i / 39) * (blank.lengthM - 0.07));
  const inBand = places.filter((at) => {
    const true_ = Math.log(blank.stiffnessNm2(at));
    return true_ >= valueAt(low, at) && true_ <= valueAt(high, at);
  });
  const widths = places.map((at) => valueAt(high, at) - valueAt(low, at));
  const width = widths.reduce((sum, by) => sum + by, 0) / widths.length;
  return { ...answer, held: inBand.length / places.length, width };
}

const changed = (request: FitRequest, change: (test: FitTest, t: number) => FitTest): FitRequest => {
  const setup = request.setups[0] as FitClampSetup;
  return { ...request, setups: [{ ...setup, tests: setup.tests.map(change) }] };
};
const seeds = Array.from({ length: 4 }, (_, k) => 5201 + k);
const said = ({ status, findings }: { status: string; findings: readonly unknown[] }) =>
  status !== 'converged' || findings.length > 0;

describe('one set-up', () => {
  test('with the tip alone read under one weight leaves most of the blank open, and holds it', () => {
    const tipOnly = { stationsM: [0], hungKg: [0, 0.05], sigmaM: 0.0015 };
    for (const seed of seeds) {
      const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
      const { held, width } = judged(benchOf(blank, seed, tipOnly), blank);
      expect(held).toBeGreaterThan(0.8);
      expect(width).toBeGreaterThan(0.5);
    }
  });
});

describe('every drop noted as the same number', () => {
  test.each([0, 0.1, 0.4])('%f m: said, or a band that is not narrow', (dropM) => {
    for (const seed of seeds) {
      const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
      const equal = changed(benchOf(blank, seed), (one) => ({
        ...one,
        readings: one.readings.map(({ fromTipM }) => ({ fromTipM, dropM })),
      }));
      const answer = judged(equal, blank);
      expect(said(answer)).toBe(true);
    }
  });
});

describe('a blank much stiffer or softer than any that is believed in', () => {
  test.each([40, 0.01])('%f times: said, or the band holds it', (times) => {
    for (const seed of seeds) {
      const usual = randomBlank(seed, { sweepSigmaPerM: 0 });
      const blank = { ...usual, stiffnessNm2: (at: number) => times * usual.stiffnessNm2(at) };
      const hungKg = plan.hungKg.map((kg) => kg * times);
      const kgPerM = (at: number) => Math.min(1, times) * usual.kgPerM(at);
      const answer = judged(benchOf({ ...blank, kgPerM }, seed, { ...plan, hungKg }), { ...blank, kgPerM });
      expect(said(answer) || answer.held > 0.8).toBe(true);
    }
  });
  test.each([
    { times: 40, stiff: true },
    { times: 0.05, stiff: false },
  ])('$times times: the finding says which way', ({ times, stiff }) => {
    const usual = randomBlank(seeds[0], { sweepSigmaPerM: 0 });
    const blank = {
      ...usual,
      stiffnessNm2: (at: number) => times * usual.stiffnessNm2(at),
      kgPerM: (at: number) => Math.min(1, times) * usual.kgPerM(at),
    };
    const hungKg = plan.hungKg.map((kg) => kg * times);
    const { findings } = judged(benchOf(blank, seeds[0], { ...plan, hungKg }), blank);
    const far = findings.find(({ code }) => code === 'fit/far-from-belief');
    expect(far?.values).toMatchObject({ stiff });
  });
  test('hardly moved by its weights it has a wide band, not a narrow one', () => {
    for (const seed of seeds) {
      const usual = randomBlank(seed, { sweepSigmaPerM: 0 });
      const blank = { ...usual, stiffnessNm2: (at: number) => 300 * usual.stiffnessNm2(at) };
      const answer = judged(benchOf(blank, seed), blank);
      expect(said(answer) || (answer.held > 0.8 && answer.width > 0.8)).toBe(true);
    }
  });
});

describe('everything odd at once', () => {
  test('swapped loads, a flag an inch off, a diameter and a clamp that are not so: never silent', () => {
    for (const seed of seeds) {
      const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
      const clean = benchOf(blank, seed);
      const tests = (clean.setups[0] as FitClampSetup).tests;
      const odd = changed(clean, (one, t) => ({
        ...one,
        hung: tests[[1, 0, 2][t]].hung,
        readings: one.readings.map((row, r) => ({ ...row, dropM: row.dropM + (r === 2 ? 0.0254 : 0) })),
      }));
      const diameters = odd.blank.diameters?.map((row, i) =>
        i === 4 ? { ...row, outsideM: row.outsideM + 0.001 } : row,
      );
      const setup = { ...(odd.setups[0] as FitClampSetup), nominalAngleRad: 0.1 };
      const answer = judged({ blank: { ...odd.blank, diameters }, setups: [setup] }, blank);
      expect(said(answer)).toBe(true);
      expect(answer.findings.some(({ path }) => path === 'blank.diameters[4].outsideM')).toBe(true);
    }
  });
});
