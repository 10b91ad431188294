/** Simulated benches of one invented blank, each day with a clamping and errors of its own (test/support). */
import { describe, expect, test } from 'vitest';
import { fullPlan, readBench } from '../../../test/support/simulated-bench.ts';
import { tapedRod } from '../../../test/support/taped-rod.ts';
import { compareDays } from './compare-days.ts';

const rod = tapedRod(41);
const stiffer = tapedRod(41, { soft: 0.6 });
const dayOf = (of: typeof rod, seed: number, sigmaM = 0.0015) => ({
  name: `day ${seed}`,
  fit: readBench(of.blank, fullPlan(sigmaM), seed, 0).request,
});

describe('one blank on two days', () => {
  test('marks repeat within their slack on most guides, and keeping them costs little', () => {
    const answer = compareDays({
      days: [dayOf(rod, 1), dayOf(rod, 2)],
      request: rod.layout,
      marksFromTipM: rod.startFromTipM,
    });
    if (answer.status !== 'compared') throw new Error(answer.reason?.code);
    expect(answer.marks).toHaveLength(rod.layout.guides.count);
    expect(answer.repeated).toBeGreaterThanOrEqual(answer.marks.length - 2);
    expect(Math.max(...answer.costOfOther)).toBeLessThan(0.15);
    expect(Math.max(...answer.tipApartM)).toBeLessThan(0.02 * rod.freeM);
    expect(answer.bandsApart).toBeLessThan(0.1);
  });
  test('another blank in its place is found out', () => {
    const answer = compareDays({
      days: [dayOf(rod, 1), dayOf(stiffer, 2)],
      request: rod.layout,
      marksFromTipM: rod.startFromTipM,
    });
    if (answer.status !== 'compared') throw new Error(answer.reason?.code);
    expect(answer.bandsApart).toBeGreaterThan(0.1);
  });
  test('a day without sense is named', () => {
    const bad = dayOf(rod, 2);
    const answer = compareDays({
      days: [dayOf(rod, 1), { ...bad, fit: { ...bad.fit, blank: { ...bad.fit.blank, lengthM: 100 } } }],
      request: rod.layout,
      marksFromTipM: rod.startFromTipM,
    });
    expect(answer).toMatchObject({ status: 'not-compared', day: 'day 2', reason: { code: 'days/refused' } });
  });
});
