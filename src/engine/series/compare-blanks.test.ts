import { expect, test } from 'vitest';
import { compareBlanks } from './compare-blanks.ts';

const band = (lengthM: number, factor: number, half: number) =>
  Array.from({ length: 81 }, (_, i) => {
    const fromTipM = (i / 80) * lengthM;
    const EINm2 = factor * Math.exp(3 * (i / 80));
    return { fromTipM, EINm2, lowNm2: EINm2 * Math.exp(-half), highNm2: EINm2 * Math.exp(half) };
  });

test('a blank a tenth stiffer everywhere is a tenth stiffer at every share of its own length', () => {
  const rows = compareBlanks(band(2.7, 1, 0.03), band(2.72, 1.1, 0.04), [0, 0.123, 0.5, 1]);
  for (const { ratio, low, high } of rows) {
    expect(ratio).toBeCloseTo(1.1, 9);
    // Independent: 0.05 = √(0.03² + 0.04²).
    expect(Math.log(high / ratio)).toBeCloseTo(0.05, 9);
    expect(Math.log(ratio / low)).toBeCloseTo(0.05, 9);
  }
});
