/**
 * What goes wrong at a bench is found and named; what did not is not. Standing: ten benches, each spoilt in one way
 * and once left clean; in a long run (BENCHES=200) half as many as it says. Numbers over many: docs/theory-stiffness.md.
 */
import { describe, expect, test } from 'vitest';
import { fullPlan, randomBlank, readBench } from '../../../test/support/simulated-bench.ts';
import { moves, type SlipKind, spoil } from '../../../test/support/slips.ts';
import { fitStiffness } from './fit.ts';

const benches = Math.max(10, Math.floor(Number(process.env.BENCHES ?? 20) / 2));
/** Named as a rule; a flag an inch off everywhere and the wrong edge may hide in the stiffness: see the docs. */
const kinds: SlipKind[] = ['inch', 'swap', 'stations', 'slip'];

const runs = Array.from({ length: benches }, (_, i) => {
  const seed = 3001 + i;
  const blank = randomBlank(seed, { sweepSigmaPerM: 0 });
  const bench = readBench(blank, fullPlan(0.0015), seed + 1000, 0);
  const kind = kinds[i % kinds.length];
  const spoilt = spoil(bench, kind, seed * 10);
  const pathsOf = (request: typeof bench.request) =>
    fitStiffness(request).answer.findings.map(({ path }) => path);
  return {
    alarms: pathsOf(bench.request).length,
    matters: moves(bench, spoilt),
    named: pathsOf(spoilt.request).some((path) => spoilt.paths.includes(path)),
  };
});

describe('slips at the bench', () => {
  test('at most 3 of 100 clean benches raise a finding', () => {
    const alarms = runs.filter((run) => run.alarms > 0).length;
    expect(alarms).toBeLessThanOrEqual(Math.max(1, 0.03 * benches));
  });

  test('a slip that would move a mark by more than its slack is named at its row, on nine of ten', () => {
    const mattering = runs.filter(({ matters }) => matters);
    expect(mattering.length).toBeGreaterThan(0.3 * benches);
    const named = mattering.filter((run) => run.named).length;
    expect(named).toBeGreaterThanOrEqual(Math.floor(0.9 * mattering.length));
  });
});
