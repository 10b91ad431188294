import { expect, test } from 'vitest';
import type { Section } from '../bench/bench.ts';
import { repairBrokenTip, tipRepairDefaults } from './broken-tip.ts';
import { replaceSection } from './replaced-section.ts';
import { cutTables, shortenRod } from './shortened-rod.ts';

const inch = 0.0254;
const inches = (...values: number[]) => values.map((value) => value * inch);
/** An invented nine-footer: intervals 4, 4.5, 5, … in. */
const nine = inches(4, 8.5, 13.5, 19, 25, 31.5, 38.5, 46, 54, 63, 73);

test('a few millimetres gone: a new tip-top, and no guide moves', () => {
  const { guides, trouble } = repairBrokenTip({ lostM: 0.005, guidesFromTipM: nine });
  expect(trouble).toBeUndefined();
  expect(guides.every(({ kind }) => kind === 'stays')).toBe(true);
  expect(guides[0]).toMatchObject({ fromTipM: nine[0] - 0.005 });
});

test.each([2, 3, 4.5, 6, 9])(
  '%s in gone: no interval shrinks on the way down, the rod below is left alone',
  (gone) => {
    const { guides, intervalsM, trouble } = repairBrokenTip({ lostM: gone * inch, guidesFromTipM: nine });
    expect(trouble).toBeUndefined();
    expect(guides).toHaveLength(nine.length);
    const touched = guides.filter(({ kind }) => kind !== 'stays').length;
    expect(touched).toBeGreaterThan(0);
    expect(touched).toBeLessThan(6);
    expect(intervalsM[0]).toBeGreaterThanOrEqual(tipRepairDefaults.shortestShare * nine[0]);
    for (let i = 1; i < intervalsM.length; i++)
      expect(intervalsM[i] / intervalsM[i - 1]).toBeGreaterThanOrEqual(0.85 - 1e-9);
    for (const fate of guides.slice(-4))
      expect(fate).toMatchObject({ kind: 'stays', fromTipM: fate.wasFromTipM - gone * inch });
  },
);

test('a sparse rod whose intervals grew faster keeps its own way of growing', () => {
  // By hand: 3 in gone leave 1, 8, 17, 28, 42, 57. To the third at 17 in: d = 3 in, but 5 2/3 after it outgrows 7/4.
  // To the fifth at 42 in, next interval 15 in: n = 5, e = 2 (75 - 42) / 30 = 2.2, d = 15 - 11 = 4 in.
  const { intervalsM, trouble } = repairBrokenTip({
    lostM: 3 * inch,
    guidesFromTipM: inches(4, 11, 20, 31, 45, 60),
  });
  expect(trouble).toBeUndefined();
  [4, 6.2, 8.4, 10.6, 12.8, 15].forEach((interval, i) => {
    expect(intervalsM[i] / inch).toBeCloseTo(interval, 9);
  });
});

test('guides spread anew stand as an arithmetic series that runs on into the intervals below', () => {
  // By hand: 2 in gone leave 2, 6.5, 11.5; with guide 1 kept, n = 2 to the second at 6.5 in, next interval 5 in:
  // e = 2 (10 - 6.5) / 6 = 7/6, d = 5 - 7/3 = 8/3 in, shorter than 3 in: refused; so the first comes off or more move.
  const { guides } = repairBrokenTip({ lostM: 2 * inch, guidesFromTipM: nine });
  const moved = guides.flatMap((fate) => ('fromTipM' in fate ? [fate.fromTipM / inch] : []));
  const intervals = moved.map((at, i) => at - (moved[i - 1] ?? 0));
  expect(intervals[0]).toBeGreaterThan(3 - 1e-9);
  const last = guides.findIndex(({ kind }) => kind === 'stays');
  const above = intervals.slice(0, last + 1);
  const steps = above.slice(1).map((value, i) => value - above[i]);
  for (const step of steps) expect(step).toBeCloseTo(steps[0] ?? step, 9);
});

test('a guide beyond the break is gone with the tip; with all of them gone nothing is made up', () => {
  const { guides } = repairBrokenTip({ lostM: 5 * inch, guidesFromTipM: nine });
  expect(guides[0]).toEqual({ kind: 'lost', wasFromTipM: nine[0] });
  const none = repairBrokenTip({ lostM: 2, guidesFromTipM: nine });
  expect(none.trouble?.code).toBe('repair/no-guide-left');
});

/** Uniform, massless but for its tip: closed forms hold. */
const uniform = {
  stiffness: [
    { fromTipM: 0, EINm2: 2 },
    { fromTipM: 3, EINm2: 2 },
  ],
  massPerLength: [
    { fromTipM: 0, kgPerM: 0.02 },
    { fromTipM: 3, kgPerM: 0.02 },
  ],
};

test('a shortened rod bends and swings as the beam it is', () => {
  const [lengthM, lostM, loadKg] = [2, 0.3, 0.002];
  const found = shortenRod({ tables: uniform, freeLengthM: lengthM, lostM, loadKg });
  // Small bends: P L³ / 3 EI and w L⁴ / 8 EI; first mode 1.8751² / 2π √(EI / m L⁴) (Blevins, Formulas for Natural
  // Frequency and Mode Shape, 1979, table 8-1).
  for (const [shape, l] of [
    [found!.before, lengthM],
    [found!.after, lengthM - lostM],
  ] as const) {
    const drop = (loadKg * 9.80665 * l ** 3) / 6 + (0.02 * 9.80665 * l ** 4) / 16;
    expect(Math.abs(shape.tipDropM / drop - 1)).toBeLessThan(0.06);
    const hz = (1.875104 ** 2 / (2 * Math.PI)) * Math.sqrt(2 / (0.02 * l ** 4));
    expect(Math.abs(shape.hz! / hz - 1)).toBeLessThan(1e-4);
  }
  // Without weight of its own a rod of one stiffness scales: the load for a third of its length goes with 1 / L².
  const light = { ...uniform, massPerLength: uniform.massPerLength.map((row) => ({ ...row, kgPerM: 1e-5 })) };
  const scaled = shortenRod({ tables: light, freeLengthM: lengthM, lostM, loadKg });
  const ratio = scaled!.after.thirdLoadKg! / scaled!.before.thirdLoadKg!;
  expect(Math.abs(ratio / (2 / 1.7) ** 2 - 1)).toBeLessThan(1e-3);
  expect(shortenRod({ tables: uniform, freeLengthM: 0.5, lostM: 0.3, loadKg })).toBeUndefined();
});

test('tables are cut where the tip broke, linear between their rows', () => {
  const tables = {
    stiffness: [
      { fromTipM: 0, EINm2: 1 },
      { fromTipM: 1, EINm2: 3 },
      { fromTipM: 2, EINm2: 9 },
    ],
    massPerLength: uniform.massPerLength,
  };
  expect(cutTables(tables, 0.5).stiffness).toEqual([
    { fromTipM: 0, EINm2: 2 },
    { fromTipM: 0.5, EINm2: 3 },
    { fromTipM: 1.5, EINm2: 9 },
  ]);
});

const section = (id: string, lengthM: number, overlapM?: number): Section =>
  ({
    id,
    name: id,
    lengthM,
    diameters: [],
    ...(overlapM === undefined ? {} : { joint: { kind: 'sleeve', overlapM } }),
  }) as Section;

test('a longer new section pushes what is seated above it away from the butt, and its own marks keep their station', () => {
  const sections = [section('tip', 1, 0.05), section('mid', 1, 0.05), section('butt', 1)];
  const guidesFromTipM = [0.3, 0.8, 1.5, 2.4];
  const { longerByM, blank, marks } = replaceSection({
    sections,
    index: 1,
    newLengthM: 1.02,
    guidesFromTipM,
  });
  expect(longerByM).toBeCloseTo(0.02, 12);
  expect(blank.lengthM).toBeCloseTo(2.92, 12);
  expect(marks.map(({ section: name, rewrapped }) => [name, rewrapped])).toEqual([
    ['tip', false],
    ['tip', false],
    ['mid', true],
    ['butt', false],
  ]);
  expect(marks[2].fromTipM).toBeCloseTo(1.5, 12);
  expect(marks[3].fromTipM).toBeCloseTo(2.42, 12);
  expect(marks[3].fromOwnTipM).toBeCloseTo(marks[3].wasFromOwnTipM, 12);
});

test('a new section too short for a mark says so instead of placing it in the air', () => {
  const sections = [section('tip', 1, 0.05), section('butt', 1)];
  const { marks } = replaceSection({ sections, index: 1, newLengthM: 0.3, guidesFromTipM: [0.4, 1.5] });
  expect(marks[1]).toMatchObject({ fromTipM: 1.5, rewrapped: true });
});
