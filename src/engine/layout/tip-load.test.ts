import { expect, test } from 'vitest';
import { nineFootEight, nineFootFive, sevenSixFour, smoothRod } from '../../../test/rods/invented-rods.ts';
import { bend } from '../bend/bend.ts';
import { tipLoadForThird } from './tip-load.ts';

test('a uniform weightless rod drops by a third at P L²/EI = 1.131343', () => {
  // Bisshopp & Drucker 1945, Quart. Appl. Math. 3:272, elliptic integrals evaluated with scipy 1.10
  const { tipN } = tipLoadForThird({ lengthM: 2, stiffness: [{ fromTipM: 0, EINm2: 3 }] });
  expect((tipN * 4) / 3).toBeCloseTo(1.131343, 3);
});

test('the load drops the tip by a third from where its own weight leaves it', () => {
  const rod = smoothRod(nineFootFive);
  const { tipN } = tipLoadForThird(rod);
  const tipY = (yN: number) => bend({ rod, buttAngleRad: 0, load: { tip: { xN: 0, yN } } }).points[0].yM;
  expect((tipY(0) - tipY(-tipN)) / rod.lengthM).toBeCloseTo(1 / 3, 4);
});

test('the invented blanks have the power and the tip slope of their line weights', () => {
  // common practice, no source: 85, 100 and 157 g for numbers 4, 5 and 8; the tip then points 59-70° down
  const blanks = [
    { blank: sevenSixFour, grams: 85 },
    { blank: nineFootFive, grams: 100 },
    { blank: nineFootEight, grams: 157 },
  ];
  for (const { blank, grams } of blanks) {
    const rod = smoothRod(blank);
    const { tipN } = tipLoadForThird(rod);
    expect(Math.abs((tipN / 9.80665) * 1000 - grams)).toBeLessThan(0.02 * grams);
    const tip = bend({ rod, buttAngleRad: 0, load: { tip: { xN: 0, yN: -tipN } } }).points[0];
    const downDegrees = (-tip.angleRad * 180) / Math.PI;
    expect(downDegrees).toBeGreaterThan(58.5);
    expect(downDegrees).toBeLessThan(70);
  }
});

test('a rod that hangs down by its own weight has no such load', () => {
  const rod = {
    lengthM: 3,
    stiffness: [{ fromTipM: 0, EINm2: 0.01 }],
    massPerLength: [{ fromTipM: 0, kgPerM: 0.2 }],
  };
  expect(tipLoadForThird(rod)).toEqual({ status: 'not-converged', tipN: 0 });
});
