import { describe, expect, test } from 'vitest';
import type { BlankTables } from '../bench/free-rod.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import { defaultLimits } from '../layout/layout-defaults.ts';
import { spreadOfMarks } from './mark-spread.ts';
import { expectedSpreadOf, quantile, spreadOf } from './spread.ts';
import { readSureness, type Sureness } from './sureness.ts';

/** An invented blank: a thin tube of linear taper, `times` as stiff as the middle one. */
function blank(times: number): BlankTables {
  const rows = Array.from({ length: 21 }, (_, i) => (i / 20) * 2.7);
  return {
    stiffness: rows.map((fromTipM) => ({ fromTipM, EINm2: times * 0.15 * (1 + 2 * fromTipM) ** 3 })),
    massPerLength: rows.map((fromTipM) => ({ fromTipM, kgPerM: 0.004 * (1 + fromTipM) })),
  };
}

const ladder: LadderRequest = {
  rod: { lengthM: 2.45, stiffness: [{ fromTipM: 0, EINm2: 1 }] },
  buttAngleRad: Math.PI / 4,
  reel: { alongM: -0.2, offsetM: 0.05 },
  guides: { count: 5, ringHeightsM: [0.004, 0.005, 0.006, 0.008, 0.014], side: 'under' },
  tipTop: { ringHeightM: 0.003 },
  ladder: [0.5, 2].map((tensionN) => ({ tensionN, pullAngleRad: -Math.PI / 2 })),
  limits: defaultLimits(2.45),
};
const growing = { ladder, fromTipM: [0.16, 0.4, 0.75, 1.25, 1.8] };
const crowdedAtButt = { ladder, fromTipM: [0.9, 1.1, 1.3, 1.5, 1.8] };
const many = [0.7, 0.85, 1, 1.2, 1.4].map(blank);

describe('a layout read on many blanks', () => {
  test('has no range where every blank is the same', () => {
    const { proposed } = readSureness({ proposed: growing }, [blank(1), blank(1), blank(1)]);
    expect(proposed?.worst.high).toBe(proposed?.worst.low);
    expect(proposed?.tips.map(({ plusMinusM }) => plusMinusM)).toEqual([0, 0]);
  });

  test('is the less sure the more the blanks differ', () => {
    const wide = readSureness({ proposed: growing }, many).proposed;
    const narrow = readSureness({ proposed: growing }, [0.97, 1, 1.03].map(blank)).proposed;
    const width = (of = narrow) => (of ? of.tips[1].plusMinusM : Number.NaN);
    expect(width(wide)).toBeGreaterThan(3 * width(narrow));
    expect(width(narrow)).toBeGreaterThan(1e-3);
  });

  test('is compared blank by blank, and the comparison turned round counts the others', () => {
    const one = readSureness({ own: growing, start: crowdedAtButt }, many).better;
    const other = readSureness({ own: crowdedAtButt, start: growing }, many).better;
    expect(one).toEqual({ ours: 'own', count: 5, of: 5 });
    expect(other).toEqual({ ours: 'own', count: 0, of: 5 });
  });

  test('says its answer early and again as blanks double; the last one is the answer', () => {
    const heard: Sureness[] = [];
    const answer = readSureness({ proposed: growing }, many, (soFar) => heard.push(soFar), 2);
    expect(heard.map(({ blanks }) => blanks)).toEqual([2, 4]);
    expect(answer.blanks).toBe(5);
    expect(answer.better).toBeUndefined();
  });
});

describe('a proposed mark', () => {
  const request = { ...ladder, firstFromTipM: 0.16, strippingFromTipM: 1.8 };

  test('moves with the blank, save where the builder holds it; keeping it costs no less than nothing', () => {
    const spread = spreadOfMarks({ request, proposedFromTipM: growing.fromTipM }, [blank(0.8), blank(1.2)]);
    expect(spread.blanks).toBe(2);
    expect(spread.plusMinusM[0]).toBeCloseTo(0, 9);
    expect(spread.plusMinusM[4]).toBeCloseTo(0, 9);
    expect(spread.plusMinusM[2]).toBeGreaterThan(1e-3);
    expect(spread.costOfKeeping).toBeGreaterThanOrEqual(0);
  });
});

describe('quantiles', () => {
  test('of evenly spread values lie at their share', () => {
    const values = Array.from({ length: 101 }, (_, i) => 100 - i);
    expect(spreadOf(values)).toEqual({ low: 2.5, high: 97.5 });
    expect(expectedSpreadOf(values).expected).toBeCloseTo(50, 9);
    expect(quantile([3], 0.95)).toBe(3);
    expect(quantile([], 0.5)).toBeNaN();
  });
});
