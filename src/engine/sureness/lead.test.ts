import { describe, expect, test } from 'vitest';
import { normalBelow, normalQuantile } from '../numerics/normal.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import { asked, countLeads, helps, type Lead, leadAsked, settles, wantedAbove } from './lead.ts';

const count = 400;
const normal = seededNormal(seededRandom(6));
/** Blanks in three directions; the lead is the first one. */
const spreads = Array.from({ length: count }, () => Float64Array.from({ length: 3 }, normal)).sort(
  (a, b) => a[0] - b[0],
);

function leadWith(shareBetter: number): Lead {
  const above = normalQuantile(shareBetter);
  const shareWorse = normalBelow(-above - 0.3);
  return {
    counts: { better: shareBetter * count, worse: Math.round(shareWorse * count), of: count },
    spreads,
    scores: Float64Array.from(spreads, (_, rank) => normalQuantile((rank + 0.5) / count)),
    above,
    spread: 0.1,
    wanted: { 'one-hold': normalQuantile(0.87), more: normalQuantile(0.8) },
  };
}
const along = (direction: number, sigmaM: number, byTiltM = 0) => ({
  bySpread: Float64Array.from({ length: 3 }, (_, k) => (k === direction ? 1 : 0)),
  byTiltM,
  sigmaM,
});

describe('marks help where they lead on enough blanks and gain enough for what they lose', () => {
  const leads = (better: number, little: number, much: number) => [
    ...Array(better).fill(0.2),
    ...Array(little).fill(-0.029),
    ...Array(much).fill(-0.5),
  ];

  test('read from one hold: on 87 of 100, twelve times', () => {
    expect(helps(leads(87, 13, 0), 'one-hold')).toBe(true);
    expect(helps(leads(86, 14, 0), 'one-hold')).toBe(false);
    // 0.2 · 97 = 19.4 gained; lost 0.5 · 3 = 1.5, twelvefold 18; with one blank more 24
    expect(helps(leads(97, 0, 3), 'one-hold')).toBe(true);
    expect(helps(leads(96, 0, 4), 'one-hold')).toBe(false);
  });

  test('read from more: on 80 of 100, eight times', () => {
    expect(helps(leads(80, 20, 0), 'more')).toBe(true);
    expect(helps(leads(79, 21, 0), 'more')).toBe(false);
    // 0.2 · 96 = 19.2 gained; lost 0.5 · 4 = 2, eightfold 16; with one blank more 20
    expect(helps(leads(96, 0, 4), 'more')).toBe(true);
    expect(helps(leads(95, 0, 5), 'more')).toBe(false);
    expect(helps([], 'more')).toBe(false);
  });

  test('what is wanted is told with the counts', () => {
    const counts = countLeads(leads(70, 24, 6));
    expect(counts).toEqual({ better: 70, worse: 6, of: 100 });
    expect(leadAsked(counts, 'one-hold')).toEqual({ ...counts, wanted: 87, oneHold: true });
    expect(leadAsked(counts, 'more')).toEqual({ ...counts, wanted: 80, oneHold: false });
  });
});

test.each(['one-hold', 'more'] as const)(
  'a normal lead on as many blanks gains more than it loses, so counted: %s',
  (readAs) => {
    const draw = seededNormal(seededRandom(12));
    const leads = (by: number) =>
      Array.from({ length: 40000 }, () => normalQuantile(asked[readAs].better + by) + draw());
    expect(helps(leads(0.01), readAs)).toBe(true);
    expect(helps(leads(-0.01), readAs)).toBe(false);
  },
);

describe('how far zero must lie below the middle of the leads', () => {
  const above = normalQuantile(0.835);
  const k = normalQuantile(asked.more.better);
  const leads = (losses: number[]) => [...losses, ...Array(100 - losses.length).fill(0.05)];

  test('as far as the share that is asked for, where gains outweigh losses', () => {
    expect(wantedAbove(leads(Array(17).fill(-0.001)), { above, spread: 0.05 }, 'more')).toBe(k);
  });

  test('farther where losses weigh more, though enough blanks are better', () => {
    // 83 · 0.05 = 4.15 gained, 8 · 9 · 0.3 = 21.6 lost
    const heavy = leads([...Array(9).fill(-0.3), ...Array(8).fill(-0.001)]);
    const wanted = wantedAbove(heavy, { above, spread: 0.05 }, 'more');
    expect(wanted).toBeGreaterThan(above + 0.5);
    // there, and not before, what is asked holds
    const shift = (wanted - above) * 0.05;
    expect(helps(heavy, 'more')).toBe(false);
    expect(
      helps(
        heavy.map((lead) => lead + shift + 1e-4),
        'more',
      ),
    ).toBe(true);
    expect(
      helps(
        heavy.map((lead) => lead + shift - 1e-3),
        'more',
      ),
    ).toBe(false);
  });

  test('is a number where all leads are alike', () => {
    expect(wantedAbove(Array(100).fill(0), { above: 0, spread: 0 }, 'more')).toBeCloseTo(k, 2);
  });
});

describe('what a reading settles between the start and marks that may be better', () => {
  // the other way: true leads drawn one by one, each read with its noise, and the rule applied to what is then known
  test.each([
    [0.8, 0.5, 'one-hold'],
    [0.6, 1, 'one-hold'],
    [0.84, 2, 'one-hold'],
    [0.7, 1, 'more'],
  ] as const)(
    'with %d better, read to %d, %s: as often as drawn one by one',
    (shareBetter, sigmaM, readAs) => {
      const above = normalQuantile(shareBetter);
      const known = 1 / (1 + sigmaM ** 2);
      const draw = seededNormal(seededRandom(9));
      let [moved, fall] = [0, 0];
      const trials = 20000;
      for (let trial = 0; trial < trials; trial++) {
        const off = draw();
        const expected = above + known * (off + sigmaM * draw());
        if (normalBelow(expected / Math.sqrt(1 - known)) < asked[readAs].better) continue;
        moved++;
        fall += 0.1 * (above + off);
      }
      const { chance, gain } = settles(leadWith(shareBetter), [along(0, sigmaM)], readAs);
      expect(chance).toBeGreaterThan(moved / trials - 0.04);
      expect(chance).toBeLessThan(moved / trials + 0.04);
      expect(Math.abs(-Math.log(1 - gain) - fall / trials)).toBeLessThan(0.006);
    },
  );

  test('a reading across the lead settles nothing, nor one whose tilt is unknown', () => {
    const lead = leadWith(0.75);
    expect(settles(lead, [along(1, 0.1)], 'one-hold').chance).toBeLessThan(0.02);
    expect(settles(lead, [along(0, 0.1, 30)], 'one-hold').chance).toBeLessThan(0.02);
    expect(settles(lead, [along(0, 0.1)], 'one-hold').chance).toBeGreaterThan(0.5);
  });

  test('unread beside it, the tilt is taken out by a second reading', () => {
    const none = { bySpread: new Float64Array(3), byTiltM: 30, sigmaM: 0.1 };
    const lead = leadWith(0.75);
    expect(settles(lead, [none, along(0, 0.1, 30)], 'one-hold').chance).toBeGreaterThan(0.5);
  });
});
