import { expect, test } from 'vitest';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import type { RotationRequest } from './request.ts';
import { readTurned } from './turned-section.ts';
import { unrolled } from './unrolled.ts';

const eighths = Array.from({ length: 8 }, (_, i) => (i * Math.PI) / 4);
/** The model of harmonics.ts, written out on its own. */
const bowAt = (turn: number) => 0.0009 * Math.cos(turn - 2);
const softAt = (turn: number) => 1 + 0.03 * Math.cos(2 * (turn - 0.8));

function readings(sigmaM: number, seed: number): RotationRequest {
  const normal = seededNormal(seededRandom(seed));
  return {
    loadsKg: [0, 0.1],
    sigmaM: 5e-5,
    readings: eighths.map((turnRad) => ({
      turnRad,
      dropsM: [
        0.0004 * softAt(turnRad) + bowAt(turnRad) + sigmaM * normal(),
        0.0054 * softAt(turnRad) + bowAt(turnRad) + sigmaM * normal(),
      ],
    })),
  };
}

test('of exact readings both curves are the truth, and the points lie on them', () => {
  const curves = unrolled(readings(0, 1));
  expect(curves?.bow).toHaveLength(73);
  for (const { turnRad, valueM } of curves?.bow ?? []) expect(valueM).toBeCloseTo(bowAt(turnRad), 9);
  for (const { turnRad, valueM } of curves?.difference ?? []) {
    expect(valueM).toBeCloseTo(0.005 * softAt(turnRad), 9);
  }
  for (const { turnRad, bowM, differenceM, odd } of curves?.points ?? []) {
    expect(bowM).toBeCloseTo(bowAt(turnRad), 9);
    expect(differenceM).toBeCloseTo(0.005 * softAt(turnRad), 9);
    expect(odd).toBe(false);
  }
});

test('the 95 % bands hold the truth about 95 times in 100', () => {
  let [held, all] = [0, 0];
  for (let seed = 1; seed <= 300; seed++) {
    const curves = unrolled(readings(5e-5, seed), Math.PI / 3);
    for (const { turnRad, valueM, plusMinusM } of curves?.bow ?? []) {
      all++;
      if (Math.abs(valueM - bowAt(turnRad)) <= plusMinusM) held++;
    }
    for (const { turnRad, valueM, plusMinusM } of curves?.difference ?? []) {
      all++;
      if (Math.abs(valueM - 0.005 * softAt(turnRad)) <= plusMinusM) held++;
    }
  }
  expect(all).toBeGreaterThan(4000);
  expect(held / all).toBeGreaterThan(0.92);
  expect(held / all).toBeLessThan(0.985);
});

test('what makes no answer makes no curves', () => {
  expect(unrolled({ loadsKg: [0.1, 0.1], sigmaM: 1e-4, readings: [] })).toBeUndefined();
});

const turned = (drops: readonly (readonly [number | undefined, number | undefined])[], heavyKg?: number) =>
  readTurned({
    id: 't1',
    sectionId: 'tip',
    held: 'span',
    loadsKg: [0, heavyKg],
    sigmaM: 5e-5,
    turns: drops.map((dropsM, k) => ({ id: `r${k}`, turnRad: eighths[k], dropsM })),
  });

test('rows still to be filled are no readings, and below four nothing is said', () => {
  const { readings: full } = readings(2e-5, 4);
  const open = full.map(({ dropsM }, k) => (k < 3 ? dropsM : ([dropsM[0], undefined] as const)));
  const few = turned(open, 0.1);
  expect([few.read, few.rows, few.answer, few.findings]).toEqual([3, 8, undefined, []]);
});

test('a missing second load, and a misread dial, are named at their fields', () => {
  const drops = readings(2e-5, 4).readings.map(({ dropsM }) => dropsM);
  expect(turned(drops).findings.map(({ path }) => path)).toEqual(['turnings/t1/loadB']);
  const misread = drops.map(([a, b], k) => [a, k === 5 ? b + 0.001 : b] as const);
  expect(turned(misread, 0.1).findings.map(({ path }) => path)).toEqual(['turnReadings/r5/dropB']);
});
