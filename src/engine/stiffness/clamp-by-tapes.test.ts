/** Simulated benches with every flag measured from both ends, the clamp said to stand two inches from where it is. */

import { expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { randomBlank, readBench } from '../../../test/support/simulated-bench.ts';
import { clampsByTapes } from './clamp-by-tapes.ts';
import { fitStiffness } from './fit.ts';
import type { FitClampSetup, FitRequest } from './request.ts';

function bench(seed: number): FitRequest {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const clampFromTipM = Math.round(1000 * (blank.lengthM - 0.15)) / 1000;
  const plan = {
    clampFromTipM,
    stationsM: [0, 0.3, 0.7, 1.2],
    hungKg: [0, 0.06],
    sigmaM: 0.0015,
    checked: true,
  };
  return readBench(blank, [plan], seed + 1000, 0).request;
}

/** Read where it stands, noted as standing `byM` farther from the tip. */
function saidElsewhere(request: FitRequest, byM: number): FitRequest {
  const setup = request.setups[0] as FitClampSetup & { clampFromTipM: number };
  const saidM = setup.clampFromTipM + byM;
  const tests = setup.tests.map((one) => ({
    ...one,
    readings: one.readings.map((reading) =>
      reading.fromTipM === setup.clampFromTipM ? { ...reading, fromTipM: saidM } : reading,
    ),
  }));
  return { ...request, setups: [{ ...setup, clampFromTipM: saidM, tests }] };
}

const seeds = Array.from({ length: 30 }, (_, k) => 4101 + k);

test('two inches off is named at the clamp on every bench, and taken out to 4 mm', () => {
  for (const seed of seeds) {
    const right = bench(seed);
    for (const byM of [0.0508, -0.0508]) {
      const { request, findings } = clampsByTapes(saidElsewhere(right, byM));
      expect(findings.map(({ path }) => path)).toEqual(['setups[0].clampFromTipM']);
      const [found, stood] = [request, right].map(
        ({ setups }) => (setups[0] as FitClampSetup).clampFromTipM ?? 0,
      );
      expect(Math.abs(found - stood)).toBeLessThan(0.004);
    }
  }
});

test('a clamp that stands where it was said to raises nothing, nor does one flag that is off', () => {
  for (const seed of seeds) {
    const right = bench(seed);
    expect(clampsByTapes(right)).toEqual({ request: right, findings: [] });
    const setup = right.setups[0] as FitClampSetup;
    const flagChecks = setup.flagChecks?.map((check, i) =>
      i === 0 ? { ...check, fromClampM: check.fromClampM + 0.0254 } : check,
    );
    expect(clampsByTapes({ ...right, setups: [{ ...setup, flagChecks }] }).findings).toEqual([]);
  }
});

test('the fit says it and answers as if it had been said rightly', () => {
  const right = bench(4101);
  const [moved, stood] = [saidElsewhere(right, 0.0508), right].map((request) => fitStiffness(request).answer);
  if (moved.status === 'refused' || stood.status === 'refused') throw new Error('refused');
  expect(inWords(moved.findings[0])).toMatch(/measured from it say/);
  for (const i of [10, 40, 70]) {
    expect(Math.abs(Math.log(moved.stiffness[i].EINm2 / stood.stiffness[i].EINm2))).toBeLessThan(0.06);
  }
});
