import { describe, expect, test } from 'vitest';
import { seededNormal, seededRandom } from './seeded-random.ts';
import { evenShare, studentBelow, studentScale } from './student.ts';

describe("Student's distribution with three degrees of freedom, of variance 1", () => {
  // tables of Student's t, three degrees: one-sided 75, 90, 97.5 and 99.5 % at 0.7649, 1.6377, 3.1824 and 5.8409
  test.each([
    [0.7649, 0.75],
    [1.6377, 0.9],
    [3.1824, 0.975],
    [5.8409, 0.995],
  ])('has the published points: %d, %d', (t, share) => {
    const x = t / Math.sqrt(3);
    expect(studentBelow(x)).toBeCloseTo(share, 4);
    expect(studentBelow(-x)).toBeCloseTo(1 - share, 4);
  });

  // tables of χ², three degrees: 2.366 is exceeded by 50 %, 0.352 by 95 %, 7.815 by 5 %
  test.each([
    [0.5, 2.366],
    [0.05, 0.352],
    [0.95, 7.815],
  ])('its scale that %d of all exceed', (share, chiSquare) => {
    expect(Math.abs(studentScale(share) * Math.sqrt(chiSquare) - 1)).toBeLessThan(0.004);
  });
  // scipy 1.17.1: 1 / scipy.stats.chi(3).ppf(1 / 256)
  test('the largest of a few hundred scales is good to 2 %', () => {
    expect(Math.abs(studentScale(1 / 256) / 4.058708 - 1)).toBeLessThan(0.02);
  });

  test('normal numbers, each times a scale of its own, are spread like it', () => {
    const normal = seededNormal(seededRandom(3));
    const count = 4096;
    const values = Array.from({ length: count }, (_, i) => studentScale(evenShare(i)) * normal());
    for (const x of [-1.96, -0.47, 0.47, 1.96]) {
      const below = values.filter((value) => value < x).length / count;
      expect(Math.abs(below - studentBelow(x))).toBeLessThan(0.02);
    }
  });
});

test('even shares: each half, quarter and eighth has its part of the first few', () => {
  const first = Array.from({ length: 15 }, (_, i) => evenShare(i));
  expect(first.slice(0, 5)).toEqual([0.5, 0.25, 0.75, 0.125, 0.625]);
  expect([...first].sort((a, b) => a - b)).toEqual(Array.from({ length: 15 }, (_, i) => (i + 1) / 16));
});
