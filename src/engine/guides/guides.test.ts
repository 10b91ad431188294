import { munkres } from 'munkres';
import { describe, expect, it, test } from 'vitest';
import { assembleBlank } from '../bench/assemble.ts';
import {
  type BagGuide,
  type BagPlace,
  costAt,
  openCost,
  outOfLineOf,
  type SortingRules,
  type Straightness,
  sortBag,
  sortingDefaults,
} from './bag-sorting.ts';
import { checkGuideSet, type SetGuide } from './check-guide-set.ts';

const classes: Straightness[] = ['straight', 'slight', 'bent'];

/** Knuth's multiplicative generator, so that every run tries the same bags. */
function numbers(seed: number) {
  let state = seed;
  return (below: number) => {
    state = (Math.imul(state, 1664525) + 1013904223) >>> 0;
    return Math.floor((state / 2 ** 32) * below);
  };
}

interface Tried {
  open: number;
  cost: number;
}

/** Every way of giving each place a guide or none: fewest open, those nearest the tip filled first, then straightest. */
function bruteForce(bag: readonly BagGuide[], places: readonly BagPlace[]): Tried {
  let best: Tried = { open: Number.POSITIVE_INFINITY, cost: 0 };
  const visit = (at: number, used: Set<string>, open: number, cost: number): void => {
    if (at === places.length) {
      if (open < best.open || (open === best.open && cost < best.cost)) best = { open, cost };
      return;
    }
    visit(at + 1, used, open + openCost(places[at], places), cost);
    for (const guide of bag) {
      const here = guide.reject === undefined && !used.has(guide.id) ? costAt(guide, places[at]) : undefined;
      if (here !== undefined) visit(at + 1, new Set([...used, guide.id]), open, cost + here);
    }
  };
  visit(0, new Set(), 0, 0);
  return best;
}

test('no other use of a small bag fills more places or is straighter: every one was tried', () => {
  for (let seed = 1; seed <= 60; seed++) {
    const pick = numbers(seed);
    const bag = Array.from({ length: 2 + pick(5) }, (_, k): BagGuide => {
      return {
        id: `b${k}`,
        size: `${1 + pick(2)}`,
        ...(pick(2) === 0
          ? { straightness: classes[pick(3)] }
          : {
              measured: {
                offsetM: pick(60) * 1e-5,
                angleRad: pick(80) * 1e-3,
              },
            }),
        reject: pick(8) === 0 ? 'cracked' : undefined,
      };
    });
    const places = Array.from({ length: 2 + pick(3) }, (_, k): BagPlace => {
      return { guide: k + 1, size: `${1 + pick(2)}`, outsideM: 0.0017 + k * 0.0016 };
    });
    const sorted = sortBag(bag, places, munkres);
    const best = bruteForce(bag, places);
    const open = sorted.places.filter(({ bagId }) => bagId === undefined);
    expect(open.reduce((sum, { guide }) => sum + openCost(places[guide - 1], places), 0)).toBe(best.open);
    expect(sorted.cost).toBeCloseTo(best.cost, 9);
    expect(sorted.order.reduce((sum, { count }) => sum + count, 0)).toBe(open.length);
    const told = sorted.spare.length + sorted.rejects.length + places.length - open.length;
    expect(told).toBe(bag.length);
  }
});

test('the straightest goes to the tip, and what fits nowhere is rejected with its reason', () => {
  const bag: BagGuide[] = [
    { id: 'a', size: '1', straightness: 'slight' },
    { id: 'b', size: '1', straightness: 'straight' },
    { id: 'c', size: '4', straightness: 'straight' },
  ];
  const places = [1, 2].map((guide) => ({ guide, size: '1', outsideM: guide * 0.002 }));
  const sorted = sortBag(bag, places, munkres);
  expect(sorted.places.map(({ bagId }) => bagId)).toEqual(['b', 'a']);
  expect(sorted.rejects.map(({ reason }) => reason)).toEqual([
    { code: 'guides/no-place', values: { size: '4' } },
  ]);
  expect(sortBag([bag[1]], places, munkres).places.map(({ bagId }) => bagId)).toEqual(['b', undefined]);
  expect(sortBag([], places, munkres).order).toEqual([{ size: '1', count: 2 }]);
  expect(sortBag(bag, [], munkres).places).toEqual([]);
});

test('what was measured decides, not the eye: the straighter on the scan goes to the tip', () => {
  const measured = (offsetM: number, angleDeg: number) => ({
    offsetM,
    angleRad: (angleDeg * Math.PI) / 180,
  });
  const bag: BagGuide[] = [
    { id: 'a', size: '1', straightness: 'straight', measured: measured(0.0002, 0) },
    { id: 'b', size: '1', measured: measured(0.00004, 0.5) },
    { id: 'c', size: '1', measured: measured(0.0011, 6) },
    { id: 'd', size: '1', measured: measured(0.00012, 4) },
  ];
  const places = [1, 2, 3].map((guide) => ({ guide, size: '1', outsideM: 0.0015 + guide * 0.0015 }));
  const sorted = sortBag(bag, places, munkres);
  expect(sorted.places.map(({ bagId }) => bagId)).toEqual(['b', 'a', 'd']);
  const [{ reason }] = sorted.rejects;
  expect(reason).toMatchObject({ code: 'guides/out-of-line', values: { size: '1', offsetM: 0.0011 } });
  expect(reason.values.roomM).toBeCloseTo(0.00054, 9);
  // A right triangle of 0.12 / 0.25 and 4 / 2.5.
  expect(outOfLineOf(bag[3]) * 1000).toBeCloseTo(0.25 * Math.sqrt(0.48 ** 2 + 1.6 ** 2), 9);
  expect(outOfLineOf({ ...bag[0], measured: undefined })).toBe(0.0001);
});

test('a bag with too few straight ones serves the tip first and says what to order', () => {
  const bag: BagGuide[] = ['straight', 'bent', 'bent', 'bent'].map((straightness, index) => ({
    id: `b${index}`,
    size: '1',
    straightness: straightness as Straightness,
  }));
  const places = [0.0018, 0.0026, 0.0035, 0.006].map((outsideM, index) => ({
    guide: index + 1,
    size: '1',
    outsideM,
  }));
  const sorted = sortBag(bag, places, munkres);
  expect(sorted.places.map(({ bagId }) => bagId)).toEqual(['b0', undefined, undefined, expect.any(String)]);
  expect(sorted.order).toEqual([{ size: '1', count: 2 }]);
  expect(sorted.spare).toHaveLength(2);
});

test('a stricter builder, and one who lets more pass, each sort by their own figures', () => {
  const bag: BagGuide[] = [{ id: 'a', size: '1', straightness: 'slight' }];
  const places = [{ guide: 1, size: '1', outsideM: 0.003 }];
  const idAt = (rules: Partial<SortingRules>) =>
    sortBag(bag, places, munkres, { ...sortingDefaults, ...rules }).places[0].bagId;
  // 0.25 mm against 1.5 tolerances of 0.18, 0.09 and 0.09 mm.
  expect(idAt({})).toBe('a');
  expect(idAt({ ofDiameter: 0.03 })).toBe(undefined);
  expect(idAt({ ofDiameter: 0.03, mostTolerances: 3 })).toBe('a');
  expect(idAt({ ofDiameter: 0.03, byEyeM: { straight: 0, slight: 0.0001, bent: 0.001 } })).toBe('a');
  const [measured] = [{ ...bag[0], measured: { offsetM: 0.0002, angleRad: 0 } }];
  expect(outOfLineOf(measured, { ...sortingDefaults, usualOffsetM: 0.0001 })).toBeCloseTo(0.0005, 12);
  const [{ reason }] = sortBag(bag, places, munkres, { ...sortingDefaults, ofDiameter: 0.03 }).rejects;
  expect(reason.values.roomM).toBeCloseTo(0.000135, 6);
});

describe('a guide set that is odd is told so at the field', () => {
  const joint = { kind: 'sleeve' as const, overlapM: 0.05, gapM: 0, plugM: 0 };
  const section = { id: 's', name: 's', lengthM: 1.2, diameters: [] };
  const blank = assembleBlank([{ ...section, joint }, section]);
  const profile = [
    { fromTipM: 0, outsideM: 0.0017 },
    { fromTipM: 2.35, outsideM: 0.009 },
  ];
  const set = (first: Partial<SetGuide>, second: Partial<SetGuide> = {}, knotM?: number) =>
    checkGuideSet(
      [
        { id: 'a', kind: 'snake', size: '1', stationM: 0.11, lengthM: 0.022, ...first },
        { id: 'b', kind: 'snake', size: '2', stationM: 0.4, lengthM: 0.024, ...second },
      ],
      blank,
      { profile, knotM },
    ).map(({ path }) => path);
  it.each([
    [{}, {}, 0.003, []],
    [{ size: '3' }, {}, undefined, ['guides/a/size']],
    [{}, {}, 0.0043, ['guides/a/size']],
    [{ openingM: 0.0029 }, {}, 0.003, ['guides/a/opening']],
    [{ footWidthM: 0.0025 }, {}, undefined, ['guides/a/footWidth']],
    [{}, { stationM: 1.16 }, undefined, ['guides/b/station']],
  ])('%j %j %s', (first, second, knotM, found) => {
    expect(set(first, second, knotM)).toEqual(found);
  });
});
