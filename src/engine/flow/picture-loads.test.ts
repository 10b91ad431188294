/** Invented blanks within the trade's usual dimensions (common practice, no source); drops by a finer mesh. */
import { describe, expect, test } from 'vitest';
import { estimateFromDiameters } from '../bench/estimate.ts';
import { strainLevels, surfaceStrainPercent } from '../bench/strain.ts';
import { bend } from '../bend/bend.ts';
import { standardGravity } from '../units/gravity.ts';
import { pictureLoads } from './picture-loads.ts';

const blanks = [
  { name: '9 ft 5-weight', lengthM: 2.743, tipM: 0.0016, buttM: 0.0102, material: 'carbon' },
  { name: '9 ft 10-weight', lengthM: 2.743, tipM: 0.0022, buttM: 0.013, material: 'carbon' },
  { name: '6 ft glass', lengthM: 1.829, tipM: 0.0018, buttM: 0.0095, material: 'glass' },
] as const;

describe.each(blanks)('three pictures of a $name', ({ lengthM, tipM, buttM, material }) => {
  const outside = (fromTipM: number) => tipM + (fromTipM / lengthM) * (buttM - tipM);
  const profile = Array.from({ length: 13 }, (_, k) => (k * lengthM) / 12).map((fromTipM) => ({
    fromTipM,
    outsideM: outside(fromTipM),
  }));
  const tables = estimateFromDiameters(profile, material);
  const clampFromTipM = lengthM - 0.15;
  const question = { tables, profile, clampFromTipM, buttAngleRad: 0 };
  const { cautionPercent } = strainLevels({ material });
  const loads = pictureLoads({ ...question, cautionPercent });
  const hang = (massKg: number) =>
    bend(
      {
        rod: { lengthM: clampFromTipM, ...tables },
        buttAngleRad: 0,
        load: { tip: { xN: 0, yN: -massKg * standardGravity } },
      },
      { resolution: 240 },
    ).points;

  test('hang nothing, then a weight that lowers the tip by up to a third, then about twice that', () => {
    const [nothing, first, second] = loads.massKg;
    expect(nothing).toBe(0);
    const share = -hang(first)[0].yM / clampFromTipM;
    expect(share).toBeGreaterThan(0.2);
    expect(share).toBeLessThan(0.34);
    expect(second / first).toBeGreaterThan(1.6);
    expect(second / first).toBeLessThan(2.7);
  });

  test('stay below the caution level, and lower where the builder sets a lower one', () => {
    const strain = (massKg: number) =>
      Math.max(
        ...hang(massKg).map(({ curvaturePerM, fromTipM }) =>
          surfaceStrainPercent(curvaturePerM, outside(fromTipM)),
        ),
      );
    expect(strain(loads.massKg[2])).toBeLessThan(1.03 * cautionPercent);
    const careful = pictureLoads({ ...question, cautionPercent: cautionPercent / 4 });
    expect(strain(careful.massKg[2])).toBeLessThan((1.03 * cautionPercent) / 4);
    expect(careful.massKg[2]).toBeLessThan(loads.massKg[2]);
  });

  test('keep the clamp high enough for the larger weight', () => {
    expect(loads.clampHeightNeededM).toBeCloseTo(0.15 - hang(loads.massKg[2])[0].yM, 2);
  });
});
