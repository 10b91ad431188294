/**
 * A short seeded part of `npm run calibration` with limits, and faults brought in that break them. The long run and its
 * counts: docs/calibration.md.
 */
import { expect, test } from 'vitest';
import { type Figures, figuresOf } from '../reference/calibration/calibration-table.ts';
import { type BenchRow, judgeBench } from '../reference/calibration/judge-bench.ts';
import type { FitClampSetup, FitRequest } from '../src/engine/stiffness/request.ts';

const seeds = [6001, 6002, 6003, 6004, 6005, 6006];

function judged(asNoted?: (bench: FitRequest) => FitRequest): BenchRow[] {
  return seeds.flatMap((seed) => judgeBench(seed, 'full', asNoted) ?? []);
}

/** What of the table so few benches can break. */
function broken({ overExpected: [middle, tail], worse3, kinds, inRange }: Figures): string[] {
  const all = kinds.find(({ kind }) => kind === 'all');
  const limits: [string, boolean][] = [
    ['true over expected, median', middle > 0.85 && middle < 1.1],
    ['true over expected, nine of ten', tail < 1.4],
    ['worse than the start', worse3 <= 1],
    ['the true worst inside its range', inRange >= 0.5],
    ['the stiffness inside its band', (all?.bandHeld ?? 0) > 0.85],
    ['the width of the band', (all?.bandWidth ?? 9) < 0.55],
    ['the marks inside their ±', (all?.marksHeld ?? 0) > 0.75],
  ];
  return limits.flatMap(([name, holds]) => (holds ? [] : [name]));
}

const rows = judged();
const figures = figuresOf(rows, 'full') as Figures;

test('what is promised on a few unlike blanks is what the true rod gives', { timeout: 120_000 }, () => {
  expect(rows.length).toBeGreaterThanOrEqual(5);
  expect(broken(figures)).toEqual([]);
});

test("a promise too good by a quarter breaks the table's limits", () => {
  const flattered = rows.map((row) => ({ ...row, expected: row.expected / 1.25, high: row.high / 1.25 }));
  expect(broken(figuresOf(flattered, 'full') as Figures)).toContain('true over expected, median');
});

test('weights noted a third too heavy break the band', { timeout: 120_000 }, () => {
  const heavier = judged((bench) => ({
    ...bench,
    setups: (bench.setups as FitClampSetup[]).map((setup) => ({
      ...setup,
      tests: setup.tests.map((one) => ({
        ...one,
        hung: one.hung?.map((hung) => ({ ...hung, massKg: (4 / 3) * hung.massKg })),
      })),
    })),
  }));
  expect(broken(figuresOf(heavier, 'full') as Figures)).toContain('the stiffness inside its band');
});

test('without a reading the start stays on every one of them', { timeout: 120_000 }, () => {
  const row = judgeBench(6002, 'none');
  expect(row?.moved).toBe(false);
  expect(row?.betterThanStart).toBeLessThan(1);
});
