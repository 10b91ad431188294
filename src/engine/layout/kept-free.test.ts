import { expect, test } from 'vitest';
import { seededRandom } from '../numerics/seeded-random.ts';
import { deepestClash, placeClear } from './kept-free.ts';
import { nearestLayout, type PlacingRules } from './placing-rules.ts';

/** Nearest layout to where the guides would like to be, priced by the squares of the distances. */
function nearTo(wanted: readonly number[]) {
  return (rules: PlacingRules) => {
    const fromTipM = nearestLayout(rules, wanted);
    if (!fromTipM) return undefined;
    const price = fromTipM.reduce((sum, station, i) => sum + (station - wanted[i]) ** 2, 0);
    return { fromTipM, worst: price, price };
  };
}

/** Every way past the zones, one after the other. */
function tryAllSides(rules: PlacingRules, search: Parameters<typeof placeClear>[0]): number {
  let least = Number.POSITIVE_INFINITY;
  const moving = rules.held.flatMap((at, i) => (at === undefined ? [i] : []));
  const ways = 2 ** (moving.length * search.zones.length);
  for (let way = 0; way < ways; way++) {
    let under = rules;
    moving.forEach((guide, g) => {
      search.zones.forEach((zone, z) => {
        const toTip = (way >> (g * search.zones.length + z)) & 1;
        const half = search.halfFootM[guide];
        if (toTip) {
          const highM = Math.min(under.highM[guide], zone.fromTipM - half);
          under = { ...under, highM: under.highM.with(guide, highM) };
        } else {
          const lowM = Math.max(under.lowM[guide], zone.toTipM + half);
          under = { ...under, lowM: under.lowM.with(guide, lowM) };
        }
      });
    });
    least = Math.min(least, search.place(under, [])?.price ?? Number.POSITIVE_INFINITY);
  }
  return least;
}

test.each([1, 2, 3, 4, 5, 6, 7, 8, 9, 10, 11, 12])(
  'branching past the zones finds what trying every side finds (seed %i)',
  (seed) => {
    const random = seededRandom(seed);
    const count = 6;
    const rules: PlacingRules = {
      count,
      held: [0.1, undefined, undefined, undefined, undefined, 1.1],
      leastIntervalM: new Array(count - 1).fill(0.05),
      growth: seed % 2 === 0 ? 'growing' : 'free',
      lowM: new Array(count).fill(Number.NEGATIVE_INFINITY),
      highM: new Array(count).fill(Number.POSITIVE_INFINITY),
    };
    const wanted = [0.1, ...[0, 0, 0, 0].map(() => 0.15 + 0.9 * random()).sort((a, b) => a - b), 1.1];
    const zones = [0.25 + 0.1 * random(), 0.6 + 0.1 * random()].map((at) => ({
      fromTipM: at,
      toTipM: at + 0.08 + 0.25 * random(),
    }));
    const search = { zones, halfFootM: new Array(count).fill(0.01), place: nearTo(wanted), maxNodes: 5000 };
    const { best, cutShort, rules: sides } = placeClear(search, rules, [wanted]);
    expect(cutShort).toBe(false);
    const least = tryAllSides(rules, search);
    if (least === Number.POSITIVE_INFINITY) expect(best).toBeUndefined();
    else {
      expect(best!.price).toBeCloseTo(least, 10);
      // the sides it found hold: nothing that keeps them can stand in a zone
      const pushed = nearestLayout(sides, [0.1, 0.3, 0.35, 0.65, 0.7, 1.1])!;
      expect(deepestClash(search, rules, pushed)).toBeUndefined();
    }
  },
);
