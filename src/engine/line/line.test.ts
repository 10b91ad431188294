import { describe, expect, test } from 'vitest';
import { linesBesideLoad } from './line-beside-load.ts';
import { kgPerGrain, placeOfLine, standardLines } from './line-standard.ts';

const grains = (count: number) => count * kgPerGrain;

describe('the line-mass standard', () => {
  test.each([
    [1, 3.8879],
    [5, 9.0718],
    [9, 15.5517],
    [13, 29.1595],
    [15, 35.6394],
  ])('number %i weighs %f g at its target (recomputed from the grains by hand)', (number, grams) => {
    expect(standardLines[number - 1].targetGrains * kgPerGrain * 1000).toBeCloseTo(grams, 4);
  });

  test('bands climb and never overlap, each around its target', () => {
    standardLines.forEach(({ lowGrains, targetGrains, highGrains }, index) => {
      expect(targetGrains - lowGrains).toBe(highGrains - targetGrains);
      if (index > 0) expect(lowGrains).toBeGreaterThan(standardLines[index - 1].highGrains);
    });
  });

  test('a band holds its own limits; a gap is said to be between two lines', () => {
    for (const { number, lowGrains, targetGrains, highGrains } of standardLines) {
      for (const mass of [lowGrains, targetGrains, highGrains]) {
        expect(placeOfLine(grains(mass))).toEqual({ kind: 'in', number });
      }
    }
    for (const mass of [87, 93]) {
      expect(placeOfLine(grains(mass))).toEqual({ kind: 'between', lower: 2, upper: 3 });
    }
    expect(placeOfLine(grains(50))).toEqual({ kind: 'between', lower: 0, upper: 1 });
    expect(placeOfLine(grains(600))).toEqual({ kind: 'between', lower: 15, upper: 16 });
  });
});

test('the ratio says how many times a line’s 30 ft the tip load is', () => {
  const beside = linesBesideLoad(grains(1400));
  expect(beside[4].ratio).toBeCloseTo(10, 12);
  expect(beside.map(({ ratio }) => ratio)).toEqual(
    beside.map(({ ratio }) => ratio).toSorted((a, b) => b - a),
  );
});
