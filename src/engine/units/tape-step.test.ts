import { expect, test } from 'vitest';
import { formatInches } from './format-inches.ts';
import { roundToTape, type TapeStep, tapeDenominator } from './tape-step.ts';

/** 1 in = 25.4 mm exactly (international yard and pound agreement, 1959): a division, and half of it. */
const divisions: [TapeStep | undefined, 8 | 16 | 32 | 64, number, number][] = [
  ['1/8 in', 8, 3.175, 1.5875],
  ['1/16 in', 16, 1.5875, 0.79375],
  ['1/32 in', 32, 0.79375, 0.396875],
  [undefined, 64, 0.396875, 0.1984375],
];

test('a division of the inch is what it is in millimetres, and rounding to it is off by half of one at most', () => {
  for (const [step, denominator, stepMm, halfMm] of divisions) {
    if (step) {
      expect(tapeDenominator(step)).toBe(denominator);
      expect(1000 * roundToTape((7 * stepMm + 0.49 * stepMm) / 1000, step)).toBeCloseTo(7 * stepMm, 9);
      expect(1000 * roundToTape((7 * stepMm + 0.51 * stepMm) / 1000, step)).toBeCloseTo(8 * stepMm, 9);
    }
    expect(formatInches(stepMm / 1000, { denominator }).remainderM).toBeCloseTo(0, 12);
    const worstMm = Math.max(
      ...Array.from({ length: 4001 }, (_, k) => {
        return 1000 * Math.abs(formatInches((k * stepMm) / 2000 / 1000, { denominator }).remainderM);
      }),
    );
    expect(worstMm).toBeLessThanOrEqual(halfMm + 1e-9);
    expect(worstMm).toBeGreaterThan(halfMm * 0.999);
  }
});
