/** Truth by shooting and photographs by a model of their own (test/support); closed form: the circle of an end moment. */
import { describe, expect, test } from 'vitest';
import { randomBlank, type TrueBlank, trueCurve } from '../../../test/support/simulated-bench.ts';
import { commonPhoto, photograph } from '../../../test/support/simulated-photo.ts';
import { secondEstimate } from './second-estimate.ts';

const hung = [{ fromTipM: 0, massKg: 0.15 }];
const nothing = { markM: 1e-7, lensM: 1e-7, localM: 1e-7, levelRad: 1e-7, tapM: 1e-7 };

function tablesOf(
  { lengthM, stiffnessNm2, kgPerM }: TrueBlank,
  factor: (s: number) => number,
  share: number,
) {
  const at = Array.from({ length: 160 }, (_, i) => (i / 159) * lengthM);
  return {
    massPerLength: at.map((fromTipM) => ({ fromTipM, kgPerM: kgPerM(fromTipM) })),
    fitted: at.map((fromTipM) => {
      const EINm2 = stiffnessNm2(fromTipM) * factor(fromTipM);
      return { fromTipM, EINm2, lowNm2: EINm2 * (1 - share), highNm2: EINm2 * (1 + share) };
    }),
  };
}

function estimated(seed: number, errors = commonPhoto, factor: (s: number) => number = () => 1) {
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const { lengthM } = blank;
  const curve = trueCurve(blank, { buttAngleRad: 0.2, clampFromTipM: lengthM, turnedRad: 0, hung });
  return secondEstimate({
    curve: { hung, points: photograph(curve, seed + 9000, errors) },
    clampFromTipM: lengthM,
    sweepSigmaPerM: 0.005,
    ...tablesOf(blank, factor, 0.03),
  });
}
const seeds = Array.from({ length: 25 }, (_, i) => 601 + i);

describe('stiffness from moment over curvature', () => {
  test('a flawless photograph gives the true stiffness, averaged alike, within 3 % where the blank bends', () => {
    const off = seeds.slice(0, 8).flatMap((seed) =>
      estimated(seed, nothing)
        .windows.filter(({ fromTipM }) => fromTipM > 0.1)
        .map(({ EINm2, fitNm2 }) => Math.abs(EINm2 / fitNm2! - 1)),
    );
    expect(off.length).toBeGreaterThan(20);
    expect(off.toSorted((a, b) => a - b)[Math.floor(0.95 * off.length)]).toBeLessThan(0.03);
  });

  test('its ± is true: 95 of 100 windows within two standard deviations, and no clean blank is accused', () => {
    const all = seeds.map((seed) => estimated(seed));
    const sigmas = all.flatMap(({ windows }) => windows.map((window) => Math.abs(window.sigmas!)));
    expect(sigmas.length).toBeGreaterThan(80);
    expect(sigmas.filter((z) => z <= 2).length / sigmas.length).toBeGreaterThanOrEqual(0.93);
    expect(all.filter(({ disagreements }) => disagreements.length > 0).length).toBeLessThanOrEqual(1);
  });

  test('a fit that is a third too stiff over half a metre is contradicted there', () => {
    const stiffened = (s: number) => (s > 0.5 && s < 1.1 ? 1.5 : 1);
    const named = seeds.map((seed) => estimated(seed, commonPhoto, stiffened).disagreements);
    const right = named.filter((found) =>
      found.some(({ fromTipM, toTipM, share }) => fromTipM < 1.1 && toTipM > 0.5 && share < -0.1),
    );
    expect(right.length).toBeGreaterThanOrEqual(0.7 * seeds.length);
  });

  test('an arc of a circle has one stiffness: EI = M/κ', () => {
    const radiusM = 2;
    const points = Array.from({ length: 101 }, (_, i) => {
      const t = (i / 100) * 0.2;
      return { xM: radiusM * Math.sin(t), yM: radiusM * (Math.cos(t) - 1) };
    });
    const { windows } = secondEstimate({
      curve: { hung, points, localSigmaM: 1e-5 },
      clampFromTipM: 0.4,
      massPerLength: [{ fromTipM: 0, kgPerM: 0 }],
      sweepSigmaPerM: 0,
    });
    // κ is 1/R everywhere, M = W (x_tip - x): in a window from a to b the mean of M over κ
    windows.forEach(({ fromTipM, toTipM, EINm2 }) => {
      const lever = 0.5 * (fromTipM + toTipM);
      expect(EINm2 / (0.15 * 9.80665 * lever * radiusM)).toBeGreaterThan(0.9);
      expect(EINm2 / (0.15 * 9.80665 * lever * radiusM)).toBeLessThan(1.1);
    });
    expect(windows.length).toBeGreaterThan(0);
  });
});
