import { describe, expect, test } from 'vitest';
import { fanAngles } from './fan.ts';
import { type FirstRingQuestion, fanLimitsDefault, firstRingRegion, ringKeeps } from './first-ring.ts';
import { funnelSteps } from './funnel-steps.ts';
import { axisMeetsFromTipM } from './spool.ts';

const source = { lipDiameterM: 0.047, alongM: -0.085, offsetM: 0.056, tiltRad: 0.05236 };
/** Invented rings: middle one size above the blank, opening two thirds. */
const rings = [16, 20, 25, 30, 40].map((mm) => ({
  name: `${mm}`,
  ringHeightM: 0.005 + mm / 1000,
  insideM: 0.67e-3 * mm,
}));
const question: FirstRingQuestion = {
  lengthM: 1.75,
  source,
  surface: [
    { fromTipM: 0, radiusM: 0.001 },
    { fromTipM: 1.75, radiusM: 0.0056 },
    { fromTipM: 1.75, radiusM: 0.0125 },
    { fromTipM: 2.1, radiusM: 0.014 },
  ],
  next: { fromTipM: 1.05, ringHeightM: 0.016 },
  rings,
  limits: fanLimitsDefault,
  axisThroughRing: false,
};
const grid = { places: 30, heights: 40, highestM: 0.08 };

describe('the first ring as a region', () => {
  const region = firstRingRegion(question, grid);

  test('some rings have a stretch, and every place within one keeps the limits while one beside it does not', () => {
    expect(region.rings.map(({ name }) => name)).toEqual(rings.map(({ name }) => name));
    expect(region.rings.some(({ stretches }) => stretches.length > 0)).toBe(true);
    region.rings.forEach(({ stretches }, i) => {
      for (const { fromTipM, toTipM } of stretches) {
        for (let share = 0; share <= 1; share += 0.25) {
          const alongM = question.lengthM - fromTipM - share * (toTipM - fromTipM);
          expect(ringKeeps(question, alongM, rings[i])).toBe(true);
        }
        const beyond = question.lengthM - toTipM - 0.002;
        if (beyond > 0.05) expect(ringKeeps(question, beyond, rings[i])).toBe(false);
      }
    });
  });

  test('the nearest place is where the largest turn is the limit: found again by halving', () => {
    const [first] = region.rings.find(({ stretches }) => stretches.length > 0)!.stretches;
    const ring = rings[region.rings.findIndex(({ stretches }) => stretches[0] === first)];
    const turn = (alongM: number) =>
      fanAngles(source, { alongM, underM: ring.ringHeightM }, { alongM: 0.7, underM: 0.016 }).largest;
    expect(turn(question.lengthM - first.toTipM)).toBeCloseTo(fanLimitsDefault.lineAngleRad, 3);
  });

  test('further from the reel the fan is narrower: the heights that keep the limits spread', () => {
    const spans = region.heights.map(({ lowestM, highestM }) => highestM - lowestM);
    expect(spans.length).toBeGreaterThan(3);
    expect(Math.max(...spans)).toBeGreaterThan(spans[0]);
    for (const { lowestM, highestM } of region.heights) expect(highestM).toBeGreaterThanOrEqual(lowestM);
  });

  test('stricter limits leave less, and a wider angle leaves more', () => {
    const width = (lineAngleRad: number) =>
      firstRingRegion({ ...question, limits: { ...question.limits, lineAngleRad } }, grid)
        .rings.flatMap(({ stretches }) => stretches)
        .reduce((sum, { fromTipM, toTipM }) => sum + toTipM - fromTipM, 0);
    expect(width(0.06)).toBeLessThan(width(0.087));
    expect(width(0.087)).toBeLessThan(width(0.12));
    expect(width(0.001)).toBe(0);
  });

  test('with the axis through the ring, each ring stands where the axis is as high as its middle, give or take half its opening', () => {
    const wide = { ...question, axisThroughRing: true, limits: { lineAngleRad: 1, clearanceM: -1 } };
    const meetsM = question.lengthM - axisMeetsFromTipM(source, question.lengthM)!;
    firstRingRegion(wide, { ...grid, places: 120 }).rings.forEach(({ stretches }, i) => {
      const { ringHeightM, insideM } = rings[i];
      const at = (heightM: number) => meetsM - heightM / Math.tan(source.tiltRad);
      for (const { fromTipM, toTipM } of stretches) {
        expect(question.lengthM - toTipM).toBeGreaterThanOrEqual(at(ringHeightM + insideM / 2) - 5e-4);
        expect(question.lengthM - fromTipM).toBeLessThanOrEqual(at(ringHeightM - insideM / 2) + 5e-4);
      }
    });
  });

  test('a level-wind has its region too', () => {
    const wind = {
      ...question,
      source: { widthM: 0.028, alongM: -0.09, offsetM: 0.03 },
      next: { fromTipM: 1.15, ringHeightM: 0.014 },
    };
    const low = [{ name: '10', ringHeightM: 0.0155, insideM: 0.0067 }];
    const [{ stretches }] = firstRingRegion({ ...wind, rings: low }, grid).rings;
    expect(stretches.length).toBe(1);
    // half the width over the limit's tangent is the least distance of a ring straight ahead
    const leastM = 0.014 / Math.tan(fanLimitsDefault.lineAngleRad);
    expect(question.lengthM - stretches[0].toTipM - wind.source.alongM).toBeGreaterThan(leastM);
  });
});

describe('sizes stepped down by a straight funnel', () => {
  const sizes = [6, 8, 10, 12, 16, 20, 25, 30].map((mm) => ({ name: `${mm}`, insideM: 0.67e-3 * mm }));
  const asked = {
    lip: source,
    first: { alongM: 0.39, insideM: 0.67 * 0.025 },
    alongM: [0.55, 0.75, 1.0, 1.2, 1.4],
    running: { alongM: 1.2, insideM: 0.67 * 0.006 },
    sizes,
  };

  test('each is the smallest on hand that is as wide as the funnel, and none is wider than the one before', () => {
    const steps = funnelSteps(asked);
    steps.forEach(({ size, neededM, because }, i) => {
      const beforeM = i === 0 ? asked.first.insideM : steps[i - 1].size!.insideM;
      expect(size!.insideM).toBeLessThanOrEqual(beforeM);
      if (because !== 'as-before') expect(size!.insideM).toBeGreaterThanOrEqual(neededM - 1e-5);
    });
    expect(steps.map(({ because }) => because)).toEqual([
      'as-before',
      'as-before',
      'funnel',
      'running',
      'running',
    ]);
    expect(steps.map(({ size }) => size!.name)).toEqual(['25', '25', '16', '6', '6']);
  });

  test('a knot may ask for a wider ring than the funnel', () => {
    const steps = funnelSteps({ ...asked, knotM: 0.005 });
    expect(steps.at(-1)).toMatchObject({ because: 'knot', size: { name: '8' } });
  });

  test('with nothing on hand that is small enough, that is what it says', () => {
    const [step] = funnelSteps({ ...asked, sizes: [{ name: '40', insideM: 0.0268 }] });
    expect(step.because).toBe('none-wide-enough');
    expect(step.size).toBeUndefined();
  });
});
