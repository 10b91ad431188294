import { expect, test } from 'vitest';
import {
  fullPlan,
  placeOn,
  randomBlank,
  readBench,
  trueCurve,
} from '../../../test/support/simulated-bench.ts';
import { bend } from '../bend/bend.ts';
import { spreadOf } from '../sureness/spread.ts';
import { fitStiffness } from './fit.ts';
import { samplePosterior } from './posterior.ts';
import type { FitSolved } from './request.ts';

test.each([1, 2, 3, 4])(
  'a clean bench foretells the bend under a load that was never hung (seed %i)',
  (seed) => {
    const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
    const bench = readBench(blank, fullPlan(0.001), seed + 100, 0);
    const answer = fitStiffness(bench.request).answer as FitSolved;
    expect(answer.status).toBe('converged');
    const { lengthM } = blank;
    const buttAngleRad = Math.PI / 4;
    const load = {
      buttAngleRad,
      clampFromTipM: lengthM,
      turnedRad: 0,
      hung: [{ fromTipM: 0, massKg: 0.25 }],
    };
    const truth = trueCurve(blank, load);
    const rod = {
      lengthM,
      stiffness: answer.stiffness,
      massPerLength: answer.massPerLength,
    };
    const told = bend({
      rod,
      buttAngleRad,
      load: { tip: { xN: 0, yN: -0.25 * 9.80665 } },
    });
    for (const point of told.points) {
      const place = placeOn(truth, point.fromTipM);
      expect(Math.hypot(point.xM - place.xM, point.yM - place.yM)).toBeLessThan(0.006 * lengthM);
    }
    expect(Math.abs(answer.tiltRad[0] - bench.tiltRad[0])).toBeLessThan(0.008);
  },
);

test('the same seed draws the same rods, and their middle is the answer', () => {
  const bench = readBench(randomBlank(5, { sweepSigmaPerM: 0 }), fullPlan(0.002), 6, 0);
  const { answer, posterior } = fitStiffness(bench.request);
  const rods = samplePosterior({ posterior: posterior! }, 400, 7);
  expect(samplePosterior({ posterior: posterior! }, 1, 7)[0]).toEqual(rods[0]);
  const { stiffness } = answer as FitSolved;
  for (const i of [5, 40, 75]) {
    const logs = rods.map((rod) => Math.log(rod.stiffness[i].EINm2));
    const mean = logs.reduce((sum, v) => sum + v, 0) / logs.length;
    const { low, high } = spreadOf(logs);
    const stated = Math.log(stiffness[i].highNm2 / stiffness[i].lowNm2);
    expect((high - low) / stated).toBeGreaterThan(0.85);
    expect((high - low) / stated).toBeLessThan(1.15);
    expect(Math.abs(mean - Math.log(stiffness[i].EINm2))).toBeLessThan((0.25 / 3.92) * stated);
  }
});

test('input that makes no sense is refused at its field', () => {
  const { request } = readBench(randomBlank(5, { sweepSigmaPerM: 0 }), fullPlan(0.002), 6, 0);
  const answer = fitStiffness({
    ...request,
    blank: { ...request.blank, lengthM: Number.NaN },
  }).answer;
  expect(answer.status).toBe('refused');
  expect(answer.findings[0].path).toBe('blank.lengthM');
});
