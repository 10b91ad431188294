/** Swings counted at a simulated bench, the truth by another method (frequency.ts) on the true blank's own tables. */

import { expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { randomBlank, readBench } from '../../../test/support/simulated-bench.ts';
import { frequency } from '../frequency/frequency.ts';
import { fitStiffness } from './fit.ts';
import type { FitRequest, FitSolved } from './request.ts';

const blank = randomBlank(71, { sweepSigmaPerM: 0 });
const at = Array.from({ length: 161 }, (_, i) => (i / 160) * blank.lengthM);
const swung = frequency({
  rod: {
    lengthM: blank.lengthM,
    stiffness: at.map((s) => ({ fromTipM: s, EINm2: blank.stiffnessNm2(s) })),
    massPerLength: at.map((s) => ({ fromTipM: s, kgPerM: blank.kgPerM(s) })),
  },
  modes: 1,
});
const trueHz = swung.status === 'converged' ? swung.hz[0] : Number.NaN;
/** One weight, read at the tip alone: little is known. */
const { request: poor } = readBench(blank, [{ stationsM: [0], hungKg: [0, 0.05], sigmaM: 0.002 }], 1071, 0);
const withSwings = (hz: number): FitRequest => ({
  ...poor,
  blank: { ...poor.blank, swings: [{ hz, sigmaHz: 0.015 * hz }] },
});
const solved = (request: FitRequest) => fitStiffness(request).answer as FitSolved;
const width = ({ stiffness }: FitSolved) =>
  stiffness.reduce((sum, { highNm2, lowNm2 }) => sum + Math.log(highNm2 / lowNm2), 0) / stiffness.length;

// by 3 %: a stopwatch tells little beside a weight
test('a count narrows what one weight at the tip left open, and the band stays true', () => {
  const [without, counted] = [solved(poor), solved(withSwings(trueHz))];
  expect(counted.findings).toEqual([]);
  expect(width(counted)).toBeLessThan(0.99 * width(without));
  const held = counted.stiffness.filter(({ fromTipM, lowNm2, highNm2 }) => {
    const truth = blank.stiffnessNm2(fromTipM);
    return truth >= lowNm2 && truth <= highNm2;
  });
  expect(held.length).toBeGreaterThanOrEqual(0.85 * counted.stiffness.length);
});

test('a count three times as fast as any such blank swings is named and left out', () => {
  const { findings } = solved(withSwings(3 * trueHz));
  expect(findings.map(({ path }) => path)).toEqual(['blank.swings[0]']);
  expect(inWords(findings[0])).toContain('Hz');
});

test('a count that makes no sense is refused at its field', () => {
  const answer = fitStiffness(withSwings(-1)).answer;
  expect(answer.status).toBe('refused');
  expect(answer.findings.map(({ path }) => path)).toContain('blank.swings[0].hz');
});
