import { describe, expect, it } from 'vitest';
import { estimateFromDiameters } from '../bench/estimate.ts';
import { materials } from '../bench/materials.ts';
import { planProtocol } from '../bench/protocol.ts';
import { surfaceStrainPercent } from '../bench/strain.ts';
import { bend } from '../bend/bend.ts';
import { standardGravity } from '../units/gravity.ts';

/** Invented blanks within the trade's usual dimensions (common practice, no source). */
const blanks = [
  { name: '9 ft 5-weight', lengthM: 2.743, tipM: 0.0016, buttM: 0.0102, material: 'carbon' },
  { name: '7 ft 6 in 3-weight', lengthM: 2.286, tipM: 0.0015, buttM: 0.0072, material: 'carbon' },
  { name: '9 ft 10-weight', lengthM: 2.743, tipM: 0.0022, buttM: 0.013, material: 'carbon' },
  { name: '11 ft two-hander', lengthM: 3.353, tipM: 0.0021, buttM: 0.0138, material: 'carbon' },
  { name: '6 ft glass', lengthM: 1.829, tipM: 0.0018, buttM: 0.0095, material: 'glass' },
] as const;

describe.each(blanks)('the protocol’s weights on a $name', ({ lengthM, tipM, buttM, material }) => {
  const outside = (fromTipM: number) => tipM + (fromTipM / lengthM) * (buttM - tipM);
  const profile = Array.from({ length: 13 }, (_, k) => (k * lengthM) / 12).map((fromTipM) => ({
    fromTipM,
    outsideM: outside(fromTipM),
  }));
  const tables = estimateFromDiameters(profile, material);
  const hang = (clampFromTipM: number, massKg: number, softer = 1) =>
    bend(
      {
        rod: {
          lengthM: clampFromTipM,
          ...tables,
          stiffness: tables.stiffness.map((row) => ({ ...row, EINm2: row.EINm2 / softer })),
        },
        buttAngleRad: 0,
        load: { tip: { xN: 0, yN: -massKg * standardGravity } },
      },
      { resolution: 120 },
    );
  const plan = planProtocol({
    kind: 'twenty-minute',
    blankLengthM: lengthM,
    tipDropM: ({ clampFromTipM, massKg }) => -hang(clampFromTipM, massKg).points[0].yM,
  });
  const strains = (softer: number) =>
    plan.setups.flatMap(({ clampFromTipM, loads }) =>
      loads.flatMap(({ massKg }) =>
        hang(clampFromTipM, massKg, softer).points.map((p) =>
          surfaceStrainPercent(p.curvaturePerM, outside(p.fromTipM)),
        ),
      ),
    );
  it('stay below the caution level, and below the stop where the blank is twice as soft as guessed', () => {
    const { cautionPercent, stopPercent } = materials[material].strain;
    expect(Math.max(...strains(1))).toBeLessThan(0.8 * cautionPercent);
    expect(Math.max(...strains(2))).toBeLessThan(stopPercent);
  });
  it('bend every set-up far enough to be read to 2 mm', () => {
    for (const { loads } of plan.setups) {
      expect(Math.max(...loads.map(({ expectedTipDropM }) => expectedTipDropM))).toBeGreaterThan(0.015);
    }
  });
});
