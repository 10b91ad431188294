import { expect, test } from 'vitest';
import { goldenSection } from './golden-section.ts';

test('the valley of a parabola and of a kink are found, within the tolerance', () => {
  expect(goldenSection((x) => (x - 0.3) ** 2 + 2, 0, 1, 1e-7).at).toBeCloseTo(0.3, 6);
  expect(goldenSection((x) => Math.max(1 - x, 2 * (x - 0.4)), 0, 1, 1e-9).at).toBeCloseTo(0.6, 8);
});

test('where it only falls, the end is found', () => {
  expect(goldenSection((x) => -x, 0, 1, 1e-6).at).toBeCloseTo(1, 5);
});

test('fourteen evaluations narrow a stretch to a two-hundredth', () => {
  let asked = 0;
  const value = (x: number) => {
    asked++;
    return (x - 0.7) ** 2;
  };
  goldenSection(value, 0, 1, 1 / 200);
  expect(asked).toBeLessThanOrEqual(14);
});
