import { describe, expect, test } from 'vitest';
import { curveBeside, orientCurve, placeOnCurve } from './curve-beside.ts';

/** An arc of a circle, from its hold at (0.4, 1.1), direction `angle` there, bending down: closed form. */
function arc(angle: number, radiusM: number, lengthM: number, mirror = 1) {
  return Array.from({ length: 241 }, (_, i) => {
    const turned = angle - ((i / 240) * lengthM) / radiusM;
    return {
      xM: 0.4 + mirror * radiusM * (Math.sin(angle) - Math.sin(turned)),
      yM: 1.1 + radiusM * (Math.cos(turned) - Math.cos(angle)),
    };
  });
}

describe('a traced curve', () => {
  test('of an arc has its length and its direction at the hold, whichever way it points', () => {
    for (const mirror of [1, -1]) {
      const curve = orientCurve(arc(0.6, 1.5, 2, mirror));
      expect(curve?.mirrored).toBe(mirror < 0);
      expect(curve?.lengthM).toBeCloseTo(2, 4);
      // The parabola's own error on an arc is s²/R² of a quarter metre: below 0.1 degrees.
      expect(Math.abs((curve?.buttAngleRad ?? 0) - 0.6)).toBeLessThan(0.002);
    }
  });
  test('is found at a distance from its tip', () => {
    const curve = orientCurve(arc(0.6, 1.5, 2));
    if (!curve) throw new Error('no curve');
    const turned = 0.6 - 1.3 / 1.5;
    const at = placeOnCurve(curve, curve.lengthM - 1.3);
    expect(at.outM).toBeCloseTo(1.5 * (Math.sin(0.6) - Math.sin(turned)), 4);
    expect(at.upM).toBeCloseTo(1.5 * (Math.cos(turned) - Math.cos(0.6)), 4);
    expect(placeOnCurve(curve, 99)).toMatchObject({ outM: 0, upM: 0 });
    expect(placeOnCurve(curve, 0).outM).toBeCloseTo(curve.places.at(-1)?.outM ?? 0, 12);
  });
  test('beside a prediction tells the difference with its sign', () => {
    const curve = orientCurve(arc(0.6, 1.5, 2));
    if (!curve) throw new Error('no curve');
    const there = placeOnCurve(curve, 0.5);
    const [flag] = curveBeside(curve, [{ fromTipM: 0.5, outM: there.outM + 0.03, upM: there.upM - 0.04 }]);
    expect(flag.offOutM).toBeCloseTo(-0.03, 12);
    expect(flag.offUpM).toBeCloseTo(0.04, 12);
    expect(flag.apartM).toBeCloseTo(0.05, 12);
  });
  test('of a few points is none', () => {
    expect(orientCurve(arc(0, 1, 1).slice(0, 5))).toBeUndefined();
    expect(orientCurve(Array.from({ length: 9 }, () => ({ xM: 1, yM: 1 })))).toBeUndefined();
  });
});
