import { expect, test } from 'vitest';
import { fiveGuidesOn } from '../../../test/support/five-guides.ts';
import { randomBlank, readBench } from '../../../test/support/simulated-bench.ts';
import { type LayoutFound, layout } from '../layout/layout.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import type { Posterior } from '../stiffness/posterior.ts';
import type { FitSolved } from '../stiffness/request.ts';
import { directionsSeen } from './directions-seen.ts';
import { expectedFall } from './expected-fall.ts';
import { marksOver } from './marks-over.ts';
import { nextReadingDefaults } from './next-reading.ts';
import { setupsOnOffer } from './reading-options.ts';
import { readingsSeen } from './readings-seen.ts';

/** A bench that has read two drops: much is still to be had. */
const blank = randomBlank(31, { sweepSigmaPerM: 0 });
const clampFromTipM = blank.lengthM - 0.15;
const plan = [{ clampFromTipM, stationsM: [0], hungKg: [0, 0.06], sigmaM: 0.0015 }];
const { request: fit } = readBench(blank, plan, 1031, 0);
const { answer, posterior: maybe } = fitStiffness(fit);
const posterior = maybe as Posterior;
const tables = answer as FitSolved;
const request = fiveGuidesOn(tables, blank.lengthM, 2);
const { fromTipM: proposedFromTipM } = layout(request) as LayoutFound;
const marks = { posterior, request, proposedFromTipM };
/** All drops of a new set-up with the clamp at half. */
const seen = setupsOnOffer({ fit, standing: 0, tables }).flatMap((offer) => {
  const atHalf = Math.abs(offer.setup.clampFromTipM / blank.lengthM - 0.5) < 0.01;
  return atHalf && offer.standing === undefined ? (readingsSeen(posterior, offer) ?? []) : [];
});
const { chord } = nextReadingDefaults;
const directions = directionsSeen(seen, { leastSeen: 0.7, most: 6 });
const { slopes } = marksOver(marks, directions, { ...nextReadingDefaults, drawn: 0 }, () => undefined);
const follow = { directions, slopes, chord };
const drawn = { drawn: 60, seed: 20 };

test('readings that tell, followed as the marks are placed, lower the worst', () => {
  expect(expectedFall(marks, follow, seen, drawn)).toBeGreaterThan(0.01);
});

test('followed the wrong way, or not at all, they lower nothing', () => {
  const wrong = slopes.map((slope) => slope.map((by) => -by));
  const none = slopes.map((slope) => slope.map(() => 0));
  expect(expectedFall(marks, { ...follow, slopes: wrong }, seen, drawn)).toBe(0);
  expect(expectedFall(marks, { ...follow, slopes: none }, seen, drawn)).toBe(0);
});

test('rough readings are worth less than fine ones, blind ones nothing', () => {
  const rough = seen.map((reading) => ({ ...reading, sigmaM: 30 * reading.sigmaM }));
  const blind = seen.map((reading) => ({ ...reading, bySpread: new Float64Array(reading.bySpread.length) }));
  expect(expectedFall(marks, follow, rough, drawn)).toBeLessThan(expectedFall(marks, follow, seen, drawn));
  expect(expectedFall(marks, follow, blind, drawn)).toBe(0);
});
