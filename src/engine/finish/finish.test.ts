import { describe, expect, it } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { type BatchInput, batchRules, planBatches } from './batches.ts';
import { coatVolumeM3, hollowCylinderM3 } from './coat-volume.ts';
import { coatFindings, coatSchedule, commonTimes, recoatAt, timesFindings } from './schedule.ts';
import { temperatureFindings, timeAtRoom } from './temperature.ts';

describe('the volume of a coat', () => {
  it('is that of many thin rings of a solid of revolution', () => {
    const [inside, wall, length, rings] = [0.004, 0.00025, 0.012, 4000];
    let rectangles = 0;
    // Shells round the axis: 2 π r dr l.
    for (let k = 0; k < rings; k++) {
      const r = inside / 2 + ((k + 0.5) / rings) * wall;
      rectangles += 2 * Math.PI * r * (wall / rings) * length;
    }
    expect(hollowCylinderM3(inside, wall, length) / rectangles).toBeCloseTo(1, 9);
  });
  it('is what Pappus gives: the wall’s area times the way of its middle', () => {
    for (const [inside, wall, length] of [
      [0.0018, 0.0002, 0.009],
      [0.009, 0.0005, 0.02],
    ]) {
      const wayM = Math.PI * (inside + wall);
      expect(hollowCylinderM3(inside, wall, length)).toBeCloseTo(wall * length * wayM, 15);
    }
  });
  it('grows with every wrap, and the first coat takes more than the second', () => {
    const wrap = { fromTipM: 0.1, toTipM: 0.112, outsideM: 0.004, overFoot: true };
    const of = (count: number, first: boolean) =>
      coatVolumeM3({ wraps: Array(count).fill(wrap), laidWidthM: 0.00015, thicknessM: 0.00025, first });
    expect(of(6, true)).toBeCloseTo(6 * of(1, true), 15);
    expect(of(1, true)).toBeGreaterThan(of(1, false));
    // A foot's wrap takes 0.05 to 0.08 ml: common practice, no source.
    expect(of(1, true) * 1e6).toBeGreaterThan(0.04);
    expect(of(1, true) * 1e6).toBeLessThan(0.08);
  });
});

const mix: BatchInput = {
  neededMl: 1.5,
  wraps: 26,
  minutesPerWrap: 0.5,
  potLifeMin: 20,
  partA: 1,
  partB: 1,
  mixBy: 'volume',
  measureStep: 0.1,
  rules: batchRules,
};

describe('a batch', () => {
  it('is never smaller than can be measured truly: 2.5 + 2.5 ml at divisions of 0.1 ml', () => {
    const { plan } = planBatches(mix);
    expect(plan).toMatchObject({ unit: 'ml', measureStep: 0.1 });
    expect(plan?.finerStep).toBeGreaterThan(0);
    expect(plan?.partA).toBeCloseTo(2.5, 9);
    expect(plan?.partB).toBeCloseTo(2.5, 9);
  });
  it('keeps the ratio off by no more than 4 % for one division of the smaller part', () => {
    for (const [partA, partB, measureStep] of [
      [2, 1, 0.1],
      [3, 1, 0.05],
      [1, 1, 0.2],
    ]) {
      const { plan } = planBatches({ ...mix, partA, partB, measureStep });
      expect(measureStep / Math.min(plan?.partA ?? 0, plan?.partB ?? 0)).toBeLessThanOrEqual(0.04 + 1e-9);
      expect((plan?.partA ?? 0) / (plan?.partB ?? 1)).toBeCloseTo(partA / partB, 9);
    }
  });
  it('is brushed within two thirds of its pot life', () => {
    for (const potLifeMin of [6, 10, 20, 45]) {
      const { plan } = planBatches({ ...mix, potLifeMin });
      expect(((26 / (plan?.batches ?? 0)) * 0.5) / potLifeMin).toBeLessThanOrEqual(2 / 3 + 0.01);
    }
  });
  it('by mass has the mass of the volume it replaces', () => {
    const byMass = {
      ...mix,
      neededMl: 40,
      potLifeMin: 200,
      mixBy: 'mass' as const,
      ratioBy: 'mass' as const,
      densityA: 1.15,
      densityB: 0.95,
    };
    const { plan } = planBatches(byMass);
    expect(plan?.unit).toBe('g');
    // Equal masses of both: their volumes add up to what is needed and half as much again.
    expect((plan?.partA ?? 0) / 1.15 + (plan?.partB ?? 0) / 0.95).toBeCloseTo(60, 0);
  });
  it('stated by volume and measured on a scale follows the densities', () => {
    // 1 to 1 by volume at 1.15 and 0.97 g/ml, 5 g in all: 1.15/2.12 and 0.97/2.12 of it
    const densities = { densityA: 1.15, densityB: 0.97 };
    const onScale = { ...mix, ...densities, ratioBy: 'volume' as const, mixBy: 'mass' as const };
    const { plan } = planBatches({ ...onScale, neededMl: 5 / 1.06 / 1.5, measureStep: 0.01 });
    expect(plan?.partA).toBeCloseTo(2.71, 2);
    expect(plan?.partB).toBeCloseTo(2.29, 2);
    expect(plan?.batchMl).toBeCloseTo(5 / 1.06, 2);
    const inSyringe = { ...mix, ...densities, ratioBy: 'mass' as const, neededMl: 10, measureStep: 0.01 };
    const { plan: byVolume } = planBatches(inSyringe);
    expect((byVolume?.partA ?? 0) * 1.15).toBeCloseTo((byVolume?.partB ?? 0) * 0.97, 9);
  });
  it('marks as fine as it says measure just what the rod needs', () => {
    const { plan } = planBatches(mix);
    const { plan: finer } = planBatches({ ...mix, measureStep: plan?.finerStep ?? 0 });
    expect(finer?.batchMl).toBeCloseTo((mix.neededMl * 1.5) / (finer?.batches ?? 0), 2);
    expect(finer?.finerStep).toBeUndefined();
  });
  it.each([
    [{ partA: 0 }, 'finish/-/partA'],
    [{ measureStep: 0 }, 'finish/-/measureStep'],
    [{ potLifeMin: 0 }, 'finish/-/potLife'],
    [{ minutesPerWrap: 0 }, 'finish/-/minutesPerWrap'],
    [{ mixBy: 'mass' as const, densityA: 1.1, densityB: 1 }, 'finish/-/ratioBy'],
    [{ mixBy: 'mass' as const, ratioBy: 'volume' as const }, 'finish/-/densityA'],
    [{ ratioBy: 'mass' as const, densityA: 1.1 }, 'finish/-/densityB'],
  ])('is refused with %j', (change, path) => {
    const { plan, findings } = planBatches({ ...mix, ...change });
    expect(plan).toBeUndefined();
    expect(findings.map((finding) => finding.path)).toEqual([path]);
  });
});

describe('the times', () => {
  it('halve for ten degrees more and double for ten less', () => {
    expect(timeAtRoom(20, 23, 33)).toBeCloseTo(10, 12);
    expect(timeAtRoom(20, 23, 13)).toBeCloseTo(40, 12);
    expect(timeAtRoom(20, 23, 23)).toBe(20);
  });
  it('say where the rule ends', () => {
    expect(temperatureFindings(23, 22)).toEqual([]);
    expect(temperatureFindings(23, 10)).toMatchObject([
      { code: 'finish/room-outside-rule', values: { roomC: 10 } },
    ]);
    expect(temperatureFindings(16, 29)).toMatchObject([
      { code: 'finish/room-off-sheet', values: { roomC: 29, sheetC: 16 } },
    ]);
    // A room below nothing is a room all the same, and far outside the rule.
    expect(temperatureFindings(23, -5)[0]).toMatchObject({ path: 'finish/-/roomC' });
    expect(inWords(temperatureFindings(23, -5)[0])).toMatch(/At -5 °C .*15 °C to 30 °C/);
  });
  it('stand in order; a coat under another has only its own brushing and turning', () => {
    const latest = coatSchedule(0, commonTimes, { roomC: 23, latest: true });
    expect(latest.map(({ due }) => due)).toEqual([
      'brushing-ends',
      'stop-turning',
      'recoat-from',
      'flex',
      'recoat-until',
      'fish',
    ]);
    expect(latest[1].atMs).toBe(6 * 3_600_000);
    expect(coatSchedule(0, commonTimes, { roomC: 23, latest: false })).toHaveLength(2);
  });
  it('name a coat in the past, in the future, too early and too late', () => {
    const coats = (hours: number[]) =>
      hours.map((hour, index) => ({ id: `c${index}`, brushedAtMs: hour * 3_600_000, roomC: 23 }));
    const said = (hours: number[]) =>
      coatFindings(coats(hours), commonTimes, 100 * 3_600_000).map(
        ({ path, severity }) => `${severity} ${path}`,
      );
    expect(said([0, 20])).toEqual([]);
    expect(said([20, 0])).toEqual(['stop coats/c1/brushedAt']);
    expect(said([0, 101])).toEqual(['stop coats/c1/brushedAt']);
    expect(said([0, 6])).toEqual(['doubt coats/c1/brushedAt']);
    expect(said([0, 70])).toEqual(['doubt coats/c1/brushedAt']);
  });
  it('that contradict each other are named', () => {
    expect(timesFindings(commonTimes)).toEqual([]);
    const wrong = { ...commonTimes, recoatUntilS: 3600, turnForS: 60, fishAfterS: 3600 };
    expect(timesFindings(wrong).map(({ path }) => path)).toEqual([
      'finish/-/recoatUntil',
      'finish/-/turnFor',
      'finish/-/fishAfter',
    ]);
  });
  it('allow a recoat inside the window alone', () => {
    const before = { brushedAtMs: 0, roomC: 23 };
    const at = (hours: number) => recoatAt(hours * 3_600_000, before, commonTimes).status;
    expect([at(5), at(20), at(60)]).toEqual(['too-early', 'now', 'sand-first']);
  });
});
