/** The mixture against its own parts: what is banded is what is drawn, and what is drawn agrees with the readings. */
import { describe, expect, test } from 'vitest';
import { readUnlikeBench } from '../../../test/support/unlike-bench.ts';
import { unlikeBlank } from '../../../test/support/unlike-blanks.ts';
import { quantile } from '../sureness/spread.ts';
import { benchModel, emptyPrediction, predictBench } from './bench-model.ts';
import { drawStates } from './draw-states.ts';
import { fitStiffness } from './fit.ts';
import { mixtureBand } from './mixture-band.ts';
import type { Posterior } from './posterior.ts';
import type { FitSolved } from './request.ts';

const { request } = readUnlikeBench(unlikeBlank(3), 'full', 3);
const fitted = fitStiffness(request);
const posterior = fitted.posterior as Posterior;
const { drawing, unknowns } = posterior;
const states = drawStates(drawing, 400, 5);

test('weights are shares of one, and the likeliest comes first', () => {
  const { kinds } = drawing.mixture;
  expect(kinds.reduce((sum, { weight }) => sum + weight, 0)).toBeCloseTo(1, 9);
  expect(Math.max(...kinds.map(({ weight }) => weight))).toBe(kinds[0].weight);
});

describe('the band', () => {
  test('has the quantiles of the blanks that are drawn', () => {
    const shares = [0.1, 0.5, 0.9];
    const band = mixtureBand(drawing.mixture, shares);
    for (const row of [8, 30, 50, 70]) {
      const logs = states.map((z) => z[unknowns.stiffness.start + row]).sort((a, b) => a - b);
      const spread = quantile(logs, 0.9) - quantile(logs, 0.1);
      shares.forEach((share, s) => {
        // 400 draws know a tenth to 6 % of the spread; the exact bend moves draws off the linear model's middle too
        expect(Math.abs(band[s][row] - quantile(logs, share)) / spread).toBeLessThan(0.2);
      });
    }
  });
  test('rises with the share and holds the likeliest blank', () => {
    const [low, middle, high] = mixtureBand(drawing.mixture, [0.025, 0.5, 0.975]);
    for (let i = 0; i < low.length; i++) expect(low[i] < middle[i] && middle[i] < high[i]).toBe(true);
    for (const { EINm2, lowNm2, highNm2 } of (fitted.answer as FitSolved).stiffness) {
      expect(lowNm2 <= EINm2 && EINm2 <= highNm2).toBe(true);
    }
  });
});

test('within one kind 95 of 100 lie 4.2 times as far out as the middle half, in the band and as drawn', () => {
  // tables of Student's t, three degrees: 3.182 / 0.765; a normal spread: 2.9
  const { mixture } = drawing;
  const one = { ...drawing, mixture: { ...mixture, kinds: [{ ...mixture.kinds[0], weight: 1 }] } };
  const reach = ([low, lower, upper, high]: readonly number[]) => (high - low) / (upper - lower);
  const shares = [0.025, 0.25, 0.75, 0.975];
  const band = mixtureBand(one.mixture, shares);
  const drawn = drawStates(one, 400, 9);
  for (const row of [8, 30, 50, 70]) {
    expect(reach(band.map((quantiles) => quantiles[row]))).toBeCloseTo(3.182 / 0.765, 1);
    const logs = drawn.map((z) => z[unknowns.stiffness.start + row]).sort((a, b) => a - b);
    expect(reach(shares.map((share) => quantile(logs, share)))).toBeGreaterThan(3.2);
  }
});

test('drawn blanks hang by the exact bend where the readings are, within about their scatter', () => {
  const { model, sigma } = drawing.problem;
  const fresh = benchModel(model.request, model.rows);
  const off = states.slice(0, 40).flatMap((z) => {
    const out = emptyPrediction(fresh, unknowns);
    expect(predictBench(fresh, unknowns, z, out)).toBe(true);
    return model.data.flatMap(({ kind, value }, d) =>
      kind === 'drop' ? [(value - out.value[d]) / sigma[d]] : [],
    );
  });
  const rms = Math.sqrt(off.reduce((sum, e) => sum + e * e, 0) / off.length);
  expect(rms).toBeGreaterThan(0.5);
  expect(rms).toBeLessThan(1.6);
});
