import { expect, test } from 'vitest';
import { flyGuides, irregularRod, nineFootFive } from '../../../test/rods/invented-rods.ts';
import { makeLadder } from './ladder.ts';
import { defaultLimits } from './layout-defaults.ts';
import { makeRatioProbe, ratioSlopes, ratiosAt } from './ratios.ts';

const stations = [0.11, 0.24, 0.39, 0.55, 0.73, 0.93, 1.15, 1.4, 1.68, 1.98];

test('slopes agree with central differences of bends solved to the end', () => {
  const rod = irregularRod(nineFootFive, 6);
  const ladder = makeLadder({
    rod,
    buttAngleRad: 0.8,
    ...flyGuides(10),
    ladder: [0.5, 4].map((tensionN) => ({ tensionN, pullAngleRad: -1.4, tiedN: 0.2 })),
    limits: defaultLimits(rod.lengthM),
  });
  const probe = makeRatioProbe(ladder);
  const here = ratiosAt(probe, stations);
  const moving = [1, 4, 8];
  const slopes = ratioSlopes(probe, stations, here.values, moving);
  const stepM = 1e-4;
  let largest = 0;
  moving.forEach((guide, column) => {
    const moved = (by: number) => ratiosAt(probe, stations.with(guide, stations[guide] + by), true).values;
    const [low, high] = [moved(-stepM), moved(stepM)];
    for (let j = 0; j < slopes.length; j++) {
      const expected = (high[j] - low[j]) / (2 * stepM);
      largest = Math.max(largest, Math.abs(expected));
      expect(Math.abs(slopes[j][column] - expected)).toBeLessThan(0.02 + 0.01 * Math.abs(expected));
    }
  });
  expect(largest).toBeGreaterThan(5);
});
