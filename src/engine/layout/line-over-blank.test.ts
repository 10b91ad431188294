import { describe, expect, test } from 'vitest';
import { castingBlank, castingDiameters as diameters } from '../../../test/support/casting-blank.ts';
import { bend } from '../bend/bend.ts';
import { piecewiseLinear } from '../numerics/piecewise-linear.ts';
import { ladderDefaults, makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { bendRequestOf } from './laid-bend.ts';
import { lineOverBlank } from './line-over-blank.ts';

/** An invented 7 ft casting blank. */
const fromTipM = [0.1, 0.39, 0.68, 0.96, 1.25];
const outside = piecewiseLinear([0, 1.75], [0.002, 0.012]);
const reel = { xM: -0.09, yM: 0.03 };
const laid = (tensionN: number, aroundRad?: number[]): LadderRequest => ({
  rod: castingBlank,
  torsionShare: 0.2,
  buttAngleRad: 0,
  reel: { alongM: -0.09, offsetM: 0.03, aroundRad: Math.PI },
  guides: { count: 5, ringHeightsM: new Array(5).fill(0.01), side: 'over', aroundRad },
  tipTop: { ringHeightM: 0.004, ...(aroundRad ? { aroundRad: 0 } : {}) },
  ladder: [{ tensionN, pullAngleRad: -Math.PI / 2 }],
  limits: { lineAngleRad: 0.26, gapM: 0.01, extraBendPerM: 0.05 },
});
const bent = (ladder: LadderRequest) => readLadder(makeLadder(ladder), fromTipM).loads[0];
const drawn = (ladder: LadderRequest) => lineOverBlank(bent(ladder), [0, ...fromTipM], reel, outside);

describe('the line as it is drawn past the blank', () => {
  test('guides on top: lies on the blank in the stretches where the bend with contact does', () => {
    const ladder = laid(15);
    const asked = { ...bendRequestOf({ ladder, fromTipM }, ladder.ladder[0]), contact: { diameters } };
    const exact = bend(asked, ladderDefaults).contact!.stretches.map(({ touches }) => touches);
    expect(exact.filter(Boolean).length).toBeGreaterThan(1);
    expect(exact.filter(Boolean).length).toBeLessThan(exact.length);
    expect(drawn(ladder).map((places) => places.length > 0)).toEqual(exact);
  });

  test('it runs a radius off the axis there', () => {
    const { fromTipM: at, xM, yM } = bent(laid(15));
    for (const place of drawn(laid(15)).flat()) {
      const off = Array.from(xM, (x, i) => Math.hypot(x - place.xM, yM[i] - place.yM));
      const node = off.indexOf(Math.min(...off));
      expect(off[node]).toBeCloseTo(0.001 + (0.005 * at[node]) / 1.75, 4);
    }
  });

  test('under a light load, and with guides under the rod, it is straight from ring to ring', () => {
    expect(drawn(laid(0.2)).flat()).toEqual([]);
    const over = laid(15);
    const under = { ...over, guides: { ...over.guides, side: 'under' as const } };
    const load = bent({ ...under, reel: { alongM: -0.09, offsetM: 0.03 } });
    const low = { xM: -0.09, yM: -0.03 };
    expect(lineOverBlank(load, [0, ...fromTipM], low, outside).flat()).toEqual([]);
  });

  test('half a turn at once goes round the side of the blank, to the one side alone', () => {
    const places = drawn(laid(6, [0, 0, 0, 0, Math.PI]));
    const sides = places[4].map(({ zM = 0 }) => zM);
    expect(Math.max(...sides.map(Math.abs))).toBeGreaterThan(0.003);
    expect(new Set(sides.filter((z) => Math.abs(z) > 1e-4).map(Math.sign)).size).toBe(1);
    expect(places.slice(0, 4).flat()).toEqual([]);
  });
});
