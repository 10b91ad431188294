/** Stretches of a curve that strayed, named in a fit of three pictures: where they are, and what is said of them. */
import { expect, test } from 'vitest';
import type { Explained } from './explanation.ts';
import type { FitProblem, MostProbable } from './most-probable.ts';
import { findingsOf } from './say-doubt.ts';

/** Picture 2 strayed by 3 mm at each of `stations` from the tip of a blank of 2 m. */
function said(stations: readonly number[]): string[] {
  const setups = [0, 1, 2].map(() => ({
    tests: [{ readings: stations.map((fromTipM) => ({ fromTipM })) }],
  }));
  const data = stations.map((_, reading) => ({ kind: 'place', setup: 1, test: 0, reading, path: 'points' }));
  const request = { blank: { lengthM: 2 }, setups };
  const named = stations.map((_, d) => ({
    kind: 'doubt',
    suspicion: { doubt: { kind: 'stretch', setup: 1, test: 0, data: [d], pattern: [] } },
    alternatives: [],
  }));
  const problem = { model: { data, request }, unknowns: { extra: { start: 0 } } };
  const best = { z: stations.map(() => 0.003) };
  const findings = findingsOf(
    { request, named } as unknown as Explained,
    problem as unknown as FitProblem,
    best as unknown as MostProbable,
  );
  return findings.map(({ code, path }) => `${path} ${code}`);
}

test('three stretches near the tip of one picture are a tip that was not still, said once', () => {
  expect(said([0.05, 0.15, 0.3])).toEqual(['setups[1].tests[0] stand/tip-smeared']);
});

test('two of them, or some elsewhere too, are each said where they are', () => {
  expect(said([0.05, 0.15])).toEqual(Array(2).fill('points fit/curve-strays'));
  expect(said([0.05, 0.15, 0.3, 1])).toEqual(Array(4).fill('points fit/curve-strays'));
});
