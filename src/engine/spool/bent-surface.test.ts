import { describe, expect, test } from 'vitest';
import { type AxisPlace, clearanceBeside } from './bent-surface.ts';
import { fanClearance, fanClearanceBy } from './fan.ts';
import { clearanceFrom, profileOf } from './surface.ts';

const lengthM = 1.7;
const surface = [
  { fromTipM: 0, radiusM: 0.001 },
  { fromTipM: 0.9, radiusM: 0.004 },
  { fromTipM: lengthM, radiusM: 0.005 },
  { fromTipM: lengthM, radiusM: 0.0125 },
];
const straight: AxisPlace[] = [
  { alongM: -0.5, underM: 0, radiusM: 0.0125 },
  { alongM: 0, underM: 0, radiusM: 0.0125 },
  { alongM: 0, underM: 0, radiusM: 0.005 },
  { alongM: 0.8, underM: 0, radiusM: 0.004 },
  { alongM: 1.7, underM: 0, radiusM: 0.001 },
];

describe('a rod that is not bent', () => {
  test('is the straight surface, outside and in', () => {
    const beside = clearanceBeside(straight);
    const profile = profileOf(surface);
    for (const alongM of [-0.3, -0.01, 0.004, 0.3, 1.1]) {
      for (const underM of [-0.02, 0.002, 0.008, 0.03]) {
        for (const asideM of [0, 0.01]) {
          const straightOn = clearanceFrom(profile, lengthM - alongM, Math.hypot(underM, asideM));
          expect(beside({ alongM, underM, asideM })).toBeCloseTo(straightOn, 12);
        }
      }
    }
  });

  test('leaves the fan as much room as the straight rod does', () => {
    const spool = { lipDiameterM: 0.046, alongM: -0.08, offsetM: 0.05, tiltRad: 0.05 };
    const ring = { alongM: 0.4, underM: 0.03 };
    const on = fanClearance(spool, ring, { surface, lengthM }).clearanceM;
    expect(fanClearanceBy(spool, ring, clearanceBeside(straight)).clearanceM).toBeCloseTo(on, 9);
  });
});

test('beside a circular arc of constant thickness: the distance from its centre says it', () => {
  const [radiusM, thickM] = [2, 0.01];
  const axis = Array.from({ length: 401 }, (_, i) => {
    const turn = (i / 400) * 0.5;
    return { alongM: radiusM * Math.sin(turn), underM: radiusM * (1 - Math.cos(turn)), radiusM: thickM };
  });
  const beside = clearanceBeside(axis);
  for (const turn of [0.1, 0.25, 0.4]) {
    for (const off of [0.03, -0.04]) {
      const at = {
        alongM: (radiusM - off) * Math.sin(turn),
        underM: radiusM - (radiusM - off) * Math.cos(turn),
      };
      expect(beside({ ...at, asideM: 0 })).toBeCloseTo(Math.abs(off) - thickM, 6);
      expect(beside({ ...at, asideM: 0.02 })).toBeCloseTo(Math.hypot(off, 0.02) - thickM, 6);
    }
  }
});
