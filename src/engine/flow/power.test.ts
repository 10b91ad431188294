import { describe, expect, test } from 'vitest';
import { countInWords } from '../../words/swings.ts';
import { shopWriter } from '../../words/writer.ts';
import type { BlankTables } from '../bench/free-rod.ts';
import { type PowerQuestion, predictPower, type SwingPrediction } from './power.ts';
import { countedHz } from './swing-count.ts';

const mm = shopWriter({ system: 'mm' });
const lengthM = 2;
const even = (EINm2: number): BlankTables => ({
  stiffness: [{ fromTipM: 0, EINm2 }],
  massPerLength: [{ fromTipM: 0, kgPerM: 0.03 }],
});
/** Uniform clamped-free beam, f = β²/(2π L²) √(EI/m), βL = 1.875104 and 4.694091 (Timoshenko, Vibration Problems in Engineering). */
const beamHz = (EINm2: number, beta: number) =>
  (beta ** 2 / (2 * Math.PI * lengthM ** 2)) * Math.sqrt(EINm2 / 0.03);
const bareOnly = {
  parts: undefined as unknown as PowerQuestion['parts'],
  marksFromTipM: [],
  swinging: [{ rod: 'bare', clampFromTipM: lengthM }],
  freeLengthM: lengthM,
} satisfies PowerQuestion;

describe('a uniform blank', () => {
  test('swings as the closed form says, at both its frequencies', () => {
    const { swings } = predictPower(bareOnly, even(5), []);
    expect(swings[0].modes[0].hz / beamHz(5, 1.875104)).toBeCloseTo(1, 5);
    expect(swings[0].modes[1].hz / beamHz(5, 4.694091)).toBeCloseTo(1, 5);
    expect(swings[0].modes[0].range).toBeUndefined();
  });

  test('its range is that of the blanks drawn: frequency with the root of stiffness, the tip load with it', () => {
    const blanks = Array.from({ length: 81 }, (_, k) => even(4 + k / 40));
    const { swings, thirdLoad } = predictPower(bareOnly, even(5), blanks);
    const range = swings[0].modes[0].range;
    expect(range?.low).toBeCloseTo(beamHz(4.05, 1.875104), 4);
    expect(range?.high).toBeCloseTo(beamHz(5.95, 1.875104), 4);
    expect(thirdLoad?.range?.low).toBeLessThan(thirdLoad?.kg ?? 0);
    expect(thirdLoad?.range?.high).toBeGreaterThan(thirdLoad?.kg ?? 0);
  });

  test('weightless, a third of its length takes the load of the elastica', () => {
    const { thirdLoad } = predictPower(bareOnly, { ...even(5), massPerLength: [] }, []);
    // heavy enough that w/L = 1/3: between a = PL²/EI of 1 (0.30172) and 1.5 (0.41098), Mattiasson 1981, table 1
    const a = ((thirdLoad?.kg ?? 0) * 9.80665 * lengthM ** 2) / 5;
    expect(a).toBeGreaterThan(1);
    expect(a).toBeLessThan(1.5);
  });
});

describe('a count beside its prediction', () => {
  const prediction: SwingPrediction = {
    rod: 'bare',
    clampFromTipM: 2.4,
    modes: [{ hz: 2, range: { low: 1.98, high: 2.03 } }],
  };
  test('has the ± of a stopwatch: 1.96 f σ/t', () => {
    const { hz, plusMinusHz } = countedHz({ counted: 40, seconds: 20 });
    expect(hz).toBe(2);
    expect(plusMinusHz).toBeCloseTo((1.96 * 2 * 0.2) / 20, 12);
  });
  test.each([
    { count: { counted: 40, seconds: 20.1 }, says: /agree within their ±/ },
    { count: { counted: 20, seconds: 9.7 }, says: /they agree/ },
    {
      count: { counted: 20, seconds: 9.5 },
      says: /disagree. Count again: one swing fewer would make them agree/,
    },
    {
      count: { counted: 40, seconds: 17 },
      says: /disagree. Check the clamp, .* like a rod 38 % stiffer or lighter, or one held 187 mm nearer the tip/,
    },
    {
      count: { counted: 40, seconds: 25 },
      says: /disagree. Check the clamp, .* like a rod 36 % softer or heavier, or one held 283 mm farther from the tip/,
    },
  ])('$count.counted in $count.seconds s', ({ count, says }) => {
    expect(countInWords(count, prediction, mm)).toMatch(says);
  });
  test('a guess from the diameters has no ± and is not called right or wrong', () => {
    const words = countInWords({ counted: 40, seconds: 30 }, { ...prediction, modes: [{ hz: 2 }] }, mm);
    expect(words).toMatch(/predicted 2.00 Hz from the diameters alone: a guess of unknown range/);
    expect(words).not.toMatch(/agree/);
  });
});
