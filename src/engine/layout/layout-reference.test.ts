/**
 * Against the outside: layouts and worst ratios that a slow independent search found, bends scored by statics and
 * shooting (reference/layout), and the arithmetic rule (common practice, no source).
 */

import { readFileSync } from 'node:fs';
import { expect, test } from 'vitest';
import {
  flyGuides,
  inchM,
  irregularRod,
  nineFootEight,
  nineFootFive,
  sevenSixFour,
  smoothRod,
} from '../../../test/rods/invented-rods.ts';
import { inWords } from '../../../test/support/in-words.ts';
import { makeLadder, readLadder } from './ladder.ts';
import type { LadderRequest } from './ladder-request.ts';
import { type LayoutFound, layout } from './layout.ts';
import type { LayoutRequest } from './layout-request.ts';

interface ReferenceCase {
  name: string;
  request: LayoutRequest & LadderRequest;
  fromTipM: number[];
  worst: number;
  startWorst?: number;
}
const file = new URL('../../../reference/layout/cases.json', import.meta.url);
const { cases } = JSON.parse(readFileSync(file, 'utf8')) as { cases: ReferenceCase[] };

function found(request: LayoutRequest): LayoutFound {
  const answer = layout(request);
  if (answer.status === 'refused') throw new Error(inWords(answer.findings[0]));
  return answer;
}

test('there are two cases made elsewhere and six or more of the slow search', () => {
  expect(cases.filter(({ startWorst }) => startWorst !== undefined)).toHaveLength(2);
  expect(cases.length).toBeGreaterThanOrEqual(8);
});

test.each(cases)('$name: the reference layout reads as the reference says', ({ request, ...reference }) => {
  const ladder = makeLadder(request);
  expect(Math.abs(readLadder(ladder, reference.fromTipM).worst / reference.worst - 1)).toBeLessThan(0.0015);
  if (reference.startWorst === undefined) return;
  const { start, startScore } = found(request);
  expect(start.fromTipM).toEqual(request.start!.fromTipM);
  expect(Math.abs(startScore.worst / reference.startWorst - 1)).toBeLessThan(0.0015);
});

test.each(cases)(
  '$name: least worst ratio no worse than the slow search found, answer within 2 %',
  (reference) => {
    const { leastWorst, score, status } = found(reference.request);
    expect(status).toBe('converged');
    expect(leastWorst).toBeLessThan(1.003 * reference.worst);
    expect(score.worst).toBeLessThan(1.02 * reference.worst);
  },
);

const smoothBlanks = [
  { name: '7 ft 6 number 4, 8 guides', blank: sevenSixFour, count: 8, firstIn: 3.5, strippingIn: 62 },
  { name: '7 ft 6 number 4, 9 guides', blank: sevenSixFour, count: 9, firstIn: 3.5, strippingIn: 62 },
  { name: '9 ft number 5, 10 guides', blank: nineFootFive, count: 10, firstIn: 4.5, strippingIn: 78 },
  { name: '9 ft number 5, first at 4 in', blank: nineFootFive, count: 10, firstIn: 4, strippingIn: 78 },
  { name: '9 ft number 8, 10 guides', blank: nineFootEight, count: 10, firstIn: 5, strippingIn: 78 },
  { name: '9 ft number 8, 11 guides', blank: nineFootEight, count: 11, firstIn: 4.5, strippingIn: 78 },
];

test.each(smoothBlanks)('$name: the default layout lands on the arithmetic rule', (builds) => {
  // common practice, no source: within 1 in over the first four guides, 2.5 in below
  const { fromTipM, start } = found({
    rod: smoothRod(builds.blank),
    buttAngleRad: Math.PI / 4,
    ...flyGuides(builds.count),
    firstFromTipM: builds.firstIn * inchM,
    strippingFromTipM: builds.strippingIn * inchM,
  });
  const offInches = fromTipM.map((station, i) => Math.abs(station - start.fromTipM[i]) / inchM);
  expect(Math.max(...offInches.slice(0, 4))).toBeLessThan(1);
  expect(Math.max(...offInches.slice(4))).toBeLessThan(2.5);
});

test('on irregular blanks the worst reading falls by more than a tenth, on smooth ones by less than a fifth', () => {
  const gainOf = (rod: LayoutRequest['rod']) =>
    found({
      rod,
      buttAngleRad: Math.PI / 4,
      ...flyGuides(10),
      firstFromTipM: 4.25 * inchM,
      strippingFromTipM: 78 * inchM,
    }).verdict.gain;
  const irregular = [1, 2, 3, 4, 5].map((seed) => gainOf(irregularRod(nineFootFive, seed)));
  expect(Math.min(...irregular)).toBeGreaterThan(0.1);
  expect(gainOf(smoothRod(nineFootFive))).toBeLessThan(0.2);
});
