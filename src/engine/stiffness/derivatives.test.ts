import { expect, test } from 'vitest';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import { benchModel, emptyPrediction, predictBench } from './bench-model.ts';
import { prepared } from './prepared.ts';
import {
  commonRoughness,
  independentPrior,
  massPrior,
  restPrior,
  stiffnessPrior,
  withRoughness,
} from './prior.ts';
import type { FitCurve, FitRequest } from './request.ts';
import { rowsOf } from './rows.ts';
import { unknownsOf, valuesOf } from './unknowns.ts';

/** A quarter of an ellipse, 2.3 m along: any curve will do. */
const points = Array.from({ length: 60 }, (_, i) => {
  const t = (i / 59) * 0.5 * Math.PI;
  return { xM: 1.8 * Math.sin(t), yM: 0.9 * (Math.cos(t) - 1) };
});
const line: FitCurve['line'] = {
  tensionN: 1.2,
  pullAngleRad: -1.4,
  rings: [0, 0.12, 0.3, 0.7, 1.3].map((fromTipM) => ({ fromTipM, ringHeightM: 0.004 + 0.006 * fromTipM })),
  side: 'under',
  reel: { alongM: -0.1, offsetM: 0.02 },
};

const request: FitRequest = {
  blank: {
    lengthM: 2.6,
    massKg: 0.03,
    sections: [
      { fromTipM: 0, toTipM: 1.32, massKg: 0.01, balanceFromTipM: 0.7 },
      { fromTipM: 1.28, toTipM: 2.6, massKg: 0.02 },
    ],
    swings: [
      { hz: 3, sigmaHz: 0.05 },
      { clampFromTipM: 1.4, hz: 8, sigmaHz: 0.2 },
    ],
  },
  setups: [
    {
      nominalAngleRad: 0.3,
      turnedRad: 0.7,
      tests: [
        { hung: [], readings: [{ fromTipM: 0.3, dropM: 0 }] },
        {
          hung: [{ fromTipM: 0.05, massKg: 0.08 }],
          readings: [0, 0.311, 1.9].map((fromTipM) => ({ fromTipM, dropM: 0 })),
        },
      ],
    },
    {
      nominalAngleRad: 0,
      clampFromTipM: 0.9,
      tests: [
        {
          hung: [{ fromTipM: 0, massKg: 0.03 }],
          readings: [{ fromTipM: 0, dropM: 0 }],
        },
      ],
    },
    {
      kind: 'span',
      supportsFromTipM: [1.5, 2.1],
      loadFromTipM: 1.8,
      turnedRad: 0.7,
      tests: [
        { massKg: 0, sagM: 0 },
        { massKg: 1, sagM: 0 },
      ],
    },
    { kind: 'curve', clampFromTipM: 2.2, tests: [{ hung: [{ fromTipM: 0, massKg: 0.1 }], points }] },
    {
      kind: 'curve',
      clampFromTipM: 2.2,
      tests: [{ masses: [{ fromTipM: 0.3, massKg: 0.001 }], line, points }],
    },
  ],
};

test('derivatives of every datum agree with central differences in every unknown', () => {
  const rows = rowsOf(request.blank.lengthM);
  const ready = prepared(request);
  const model = benchModel(ready, rows);
  const unknowns = unknownsOf({
    stiffness: withRoughness(stiffnessPrior(request.blank, rows), commonRoughness),
    rest: restPrior(request.blank, rows, 0.02),
    restAcross: restPrior(request.blank, rows, 0.02),
    mass: massPrior(request.blank, rows),
    tilt: independentPrior([0.02, 0.02, 1e-6, 0.02, 0.02]),
    drift: independentPrior(ready.driftSigmas),
    extra: independentPrior([]),
  });
  const normal = seededNormal(seededRandom(3));
  const z = new Float64Array(unknowns.size);
  valuesOf(
    unknowns,
    Float64Array.from({ length: unknowns.size }, () => 0.5 * normal()),
    z,
  );
  const here = emptyPrediction(model, unknowns);
  const low = emptyPrediction(model, unknowns);
  const high = emptyPrediction(model, unknowns);
  predictBench(model, unknowns, z, here);
  const h = 1e-4;
  for (let k = 0; k < unknowns.size; k++) {
    if (k === unknowns.tilt.start + 2) continue; // a span has no tilt
    const away = z.slice();
    away[k] = z[k] - h;
    predictBench(model, unknowns, away, low);
    away[k] = z[k] + h;
    expect(predictBench(model, unknowns, away, high)).toBe(true);
    model.data.forEach(({ kind }, d) => {
      const difference = (high.value[d] - low.value[d]) / (2 * h);
      const analytic = here.jacobian[d * unknowns.size + k];
      // a span's derivatives hold its levers fixed
      const allowance =
        kind === 'sag' ? 2e-5 + 0.03 * Math.abs(difference) : 2e-7 + 1e-4 * Math.abs(difference);
      expect(Math.abs(analytic - difference)).toBeLessThan(allowance);
    });
  }
});
