import { describe, expect, test } from 'vitest';
import { fiveGuidesOn } from '../../../test/support/five-guides.ts';
import { straightSag } from '../../../test/support/reading-policy.ts';
import { randomBlank, readBench, type SetupPlan } from '../../../test/support/simulated-bench.ts';
import { readingInWords } from '../../words/next-reading.ts';
import { shopWriter } from '../../words/writer.ts';
import { freeRod } from '../bench/free-rod.ts';
import { bend } from '../bend/bend.ts';
import { frequency } from '../frequency/frequency.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { piecewiseLinear, valueAt } from '../numerics/piecewise-linear.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import { type Posterior, samplePosterior } from '../stiffness/posterior.ts';
import type { FitSolved } from '../stiffness/request.ts';
import type { WeighedOption } from './enough.ts';
import { nextReading, nextReadingDefaults, variancesTaken } from './next-reading.ts';
import { setupsOnOffer } from './reading-options.ts';
import { readingsSeen } from './readings-seen.ts';
import { spansOnOffer } from './span-offers.ts';
import { spreadOf } from './spread.ts';
import { swingsOnOffer } from './swing-offers.ts';

const plan = (lengthM: number): SetupPlan[] => [
  {
    clampFromTipM: lengthM - 0.15,
    stationsM: [0, 0.3, 0.7, 1.3],
    hungKg: [0, 0.06],
    sigmaM: 0.0015,
  },
];
const blank = randomBlank(31, { sweepSigmaPerM: 0 });
const { request: fit } = readBench(blank, plan(blank.lengthM), 1031, 0);
const { answer, posterior: maybe } = fitStiffness(fit);
const tables = answer as FitSolved;
const posterior = maybe as Posterior;
const question = { fit, standing: 0, tables };
const offers = setupsOnOffer(question);

describe('what could be read', () => {
  const options = offers.flatMap(({ options: all }) => all.map(({ option }) => option));

  test('in the set-up that stands costs less work than the same in a new one', () => {
    const oneDrop = options.filter(({ readings, standing }) => readings === 1 && standing === 0);
    const anew = options.filter(({ standing }) => standing === undefined);
    expect(oneDrop.length).toBeGreaterThan(10);
    expect(Math.max(...oneDrop.map(({ minutes }) => minutes))).toBeLessThan(
      Math.min(...anew.map(({ minutes }) => minutes)),
    );
  });

  test('names every reading of its set-up once, and only what stands in front of the blocks', () => {
    for (const { setup, options: all } of offers) {
      const count = setup.tests.reduce((sum, { readings }) => sum + readings.length, 0);
      for (const { rows, option } of all) {
        expect(new Set(rows).size).toBe(rows.length);
        expect(rows.every((row) => row >= 0 && row < count)).toBe(true);
        const places = option.loads.flatMap(({ readFromTipM }) => readFromTipM);
        expect(Math.max(...places)).toBeLessThan(option.clampFromTipM);
      }
    }
  });

  test('a straight blank is not turned over; one that may be bowed is', () => {
    expect(options.some(({ turnedRad }) => turnedRad !== 0)).toBe(false);
    const bowed = { ...fit, blank: { ...fit.blank, sweepSigmaPerM: 0.02 } };
    const all = setupsOnOffer({ ...question, fit: bowed }).flatMap((offer) => offer.options);
    expect(all.some(({ option }) => option.turnedRad === Math.PI)).toBe(true);
  });
});

// the other way: blanks drawn from the fit, each bent by itself
test('the spread foretold for a reading is that of drawn blanks bent one by one', () => {
  const offer = offers.find(({ setup }) => Math.abs(setup.clampFromTipM / blank.lengthM - 0.5) < 0.01);
  const seen = offer && readingsSeen(posterior, offer);
  if (!offer || !seen) throw new Error('no set-up with the blocks at half');
  const massKg = offer.setup.tests[1].hung?.[0].massKg ?? 0;
  const tips = samplePosterior({ posterior }, 400, 9).map(({ stiffness, massPerLength = [] }) => {
    const rod = freeRod({ stiffness, massPerLength }, offer.setup.clampFromTipM);
    const load = { tip: { xN: 0, yN: -9.80665 * massKg } };
    return -bend({ rod, buttAngleRad: 0, load }, { resolution: 120 }).points[0].yM;
  });
  const middle = tips.reduce((sum, tip) => sum + tip, 0) / tips.length;
  const spread = Math.sqrt(tips.reduce((sum, tip) => sum + (tip - middle) ** 2, 0) / tips.length);
  const told = Math.hypot(...seen[offer.setup.tests[0].readings.length].bySpread);
  // 400 draws know a spread to 3.5 %; the rest is the bend's own curvature over so wide a posterior
  expect(told / spread).toBeGreaterThan(0.85);
  expect(told / spread).toBeLessThan(1.15);
});

describe('spans and swings on offer', () => {
  const drawn = samplePosterior({ posterior }, 300, 11);
  // drawn blanks are spread as Student's distribution, of which 95 of 100 lie within 1.837 standard deviations
  const spreadOver = (values: readonly number[]) => {
    const { low, high } = spreadOf(values);
    return (high - low) / (2 * 1.837);
  };
  const asTrue = ({ lengthM, stiffness, massPerLength = [] }: (typeof drawn)[number]) => {
    const [EI, mu] = [stiffness.map((row) => row.EINm2), massPerLength.map((row) => row.kgPerM)];
    const at = [stiffness, massPerLength].map((rows) => rows.map(({ fromTipM }) => fromTipM));
    const [tableOfEI, tableOfMass] = [piecewiseLinear(at[0], EI), piecewiseLinear(at[1], mu)];
    return {
      lengthM,
      stiffnessNm2: (s: number) => valueAt(tableOfEI, s),
      kgPerM: (s: number) => valueAt(tableOfMass, s),
    };
  };

  test('the spread foretold for a sag is that of drawn blanks by statics and two integrals', () => {
    for (const offer of spansOnOffer(question)) {
      const { supportsFromTipM, loadFromTipM, tests } = offer.setup;
      const { massKg } = tests[1];
      const sags = drawn.map((rod) => straightSag(asTrue(rod), { supportsFromTipM, loadFromTipM, massKg }));
      const told = Math.hypot(...(readingsSeen(posterior, offer)?.[1].bySpread ?? []));
      // 300 draws know such a spread to 7 %; so wide a posterior adds the curvature of 1/EI
      expect(told / spreadOver(sags)).toBeGreaterThan(0.7);
      expect(told / spreadOver(sags)).toBeLessThan(1.25);
    }
  });

  test('the spread foretold for a count is that of drawn blanks by subspace iteration', () => {
    const offered = swingsOnOffer(question, { gripM: 0.25, stopwatchSigmaS: 0.2, fastestHz: 12 });
    expect(offered.length).toBeGreaterThan(0);
    for (const offer of offered) {
      const logs = drawn.slice(0, 150).flatMap(({ stiffness, massPerLength = [] }) => {
        const rod = freeRod({ stiffness, massPerLength }, offer.clampFromTipM);
        const swung = frequency({ rod, modes: 1 });
        return swung.status === 'converged' ? [Math.log(swung.hz[0])] : [];
      });
      const told = Math.hypot(...(readingsSeen(posterior, offer)?.[0].bySpread ?? []));
      expect(told / spreadOver(logs)).toBeGreaterThan(0.8);
      expect(told / spreadOver(logs)).toBeLessThan(1.2);
    }
  });

  test('a hold that was counted is not offered again', () => {
    const [{ clampFromTipM }] = swingsOnOffer(question, { gripM: 0.25, stopwatchSigmaS: 0.2, fastestHz: 12 });
    const counted = { ...fit, blank: { ...fit.blank, swings: [{ clampFromTipM, hz: 2, sigmaHz: 0.03 }] } };
    const again = swingsOnOffer(
      { ...question, fit: counted },
      { gripM: 0.25, stopwatchSigmaS: 0.2, fastestHz: 12 },
    );
    expect(again.some((offer) => offer.clampFromTipM === clampFromTipM)).toBe(false);
  });

  test('are told in the shop’s own units', () => {
    const [span] = spansOnOffer(question).flatMap(({ options }) => options.map(({ option }) => option));
    const words = readingInWords(span, shopWriter({ system: 'inch' }));
    expect(words).toMatch(
      /two supports, [\d ⁄]+ in and [\d ⁄]+ in from the tip\. .*With nothing hung, then with/,
    );
    expect(words).not.toContain(' mm');
  });
});

describe('variances taken', () => {
  const normal = seededNormal(seededRandom(4));
  const vector = (n: number) => Float64Array.from({ length: n }, normal);
  const axes = [0, 1, 2].map((k) => Float64Array.from({ length: 3 }, (_, i) => (i === k ? 1 : 0)));
  const slopes = [0, 1, 2].map(() => [normal(), normal()]);
  const sigmaM = 0.4;

  // M (I + WᵀW/σ²)⁻¹ Mᵀ by eigenvectors: the information form of the same update
  test('are those of the posterior worked out anew', () => {
    const readings = [0, 1].map(() => ({ bySpread: vector(3), byTiltM: 0, sigmaM }));
    const information = axes.map((_, i) =>
      axes.map((__, j) =>
        readings.reduce((sum, { bySpread: w }) => sum + (w[i] * w[j]) / sigmaM ** 2, i === j ? 1 : 0),
      ),
    );
    const { values, vectors } = symmetricEigen(information);
    const taken = variancesTaken(slopes, axes, readings);
    [0, 1].forEach((mark) => {
      const before = slopes.reduce((sum, slope) => sum + slope[mark] ** 2, 0);
      const after = values.reduce((sum, value, k) => {
        const along = slopes.reduce((total, slope, i) => total + slope[mark] * vectors[k][i], 0);
        return sum + along ** 2 / value;
      }, 0);
      expect(taken[mark]).toBeCloseTo(before - after, 12);
    });
  });

  test('one drop under a tilt unknown tells little, its difference to another one much', () => {
    const w = vector(3);
    const one = { bySpread: w, byTiltM: 30, sigmaM: 0.01 };
    const none = { bySpread: new Float64Array(3), byTiltM: 30, sigmaM: 0.01 };
    const alone = variancesTaken(slopes, axes, [one])[0];
    const together = variancesTaken(slopes, axes, [none, one])[0];
    expect(together).toBeGreaterThan(50 * alone);
  });
});

describe('the next reading', () => {
  const request = fiveGuidesOn(tables, blank.lengthM, 3);
  const { fromTipM, slackM } = layout(request) as LayoutFound;
  const shares: number[] = [];
  const options = { ...nextReadingDefaults, drawn: 4, shown: 500 };
  const asked = { ...question, posterior, request, proposedFromTipM: fromTipM, slackM };
  const next = nextReading(asked, (share) => shares.push(share), options);

  test('never widens a mark; marks that are held have no ± to narrow', () => {
    for (const option of next.options) {
      option.plusMinusM.forEach((after, mark) => {
        expect(after).toBeLessThanOrEqual(next.plusMinusM[mark] + 1e-12);
      });
    }
    expect(next.plusMinusM[0]).toBeLessThan(1e-6);
    expect(next.plusMinusM[4]).toBeLessThan(1e-6);
  });

  test('more stations under the same weight narrow no less', () => {
    const anew = next.options.filter(({ standing }) => standing === undefined);
    for (const whole of anew.filter(({ readings }) => readings === 10)) {
      const tip = anew.find(
        ({ clampFromTipM, readings }) => clampFromTipM === whole.clampFromTipM && readings === 2,
      );
      expect(whole.narrows).toBeGreaterThanOrEqual(tip?.narrows ?? Number.NaN);
    }
  });

  test('says how far it is, and is not enough after eight readings of one set-up', () => {
    expect(shares.at(-1)).toBe(1);
    expect(next.enough).toBeUndefined();
    expect(next.farthest.movesM).toBeGreaterThan(next.slackM[next.farthest.mark]);
  });

  test('where the slack is wider than the ± it is enough', () => {
    const wide = slackM.map(() => ({ towardsTip: 1, towardsButt: 1 }));
    expect(nextReading({ ...asked, slackM: wide }, undefined, options).enough).toBe('within-slack');
  });

  describe('where the start stays because other marks lead on too few blanks', () => {
    const start = evenly(fromTipM);
    const open = nextReading({ ...asked, proposedFromTipM: start, insteadFromTipM: fromTipM }, undefined, {
      ...options,
      littleChance: 0,
    });

    test('what settles that most comes first, and is what ten minutes bring', () => {
      const gains = open.options.map(({ settles }) => settles?.gain ?? Number.NaN);
      expect(gains).toEqual([...gains].sort((a, b) => b - a));
      expect(gains[0]).toBeGreaterThan(0);
      expect(open.tenMinutes?.gain).toBe(Math.max(...open.options.map(gainWithinTen)));
      expect(open.unsure?.of).toBeGreaterThan(90);
      expect(open.enough).toBeUndefined();
    });

    test('it is enough where ten minutes hardly move the marks, whatever they would narrow', () => {
      const never = { ...options, littleChance: 1.01 };
      const question = { ...asked, proposedFromTipM: start, insteadFromTipM: fromTipM };
      expect(nextReading(question, undefined, never).enough).toBe('settles-little');
    });
  });
});

/** The same ends, intervals all alike. */
function evenly(fromTipM: readonly number[]): number[] {
  const [first, last] = [fromTipM[0], fromTipM[fromTipM.length - 1]];
  return fromTipM.map((_, i) => first + ((last - first) * i) / (fromTipM.length - 1));
}

function gainWithinTen({ minutes, settles }: WeighedOption): number {
  return minutes <= 10 ? (settles?.gain ?? 0) : 0;
}
