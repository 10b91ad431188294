import { describe, expect, test } from 'vitest';
import type { NextReading } from '../engine/sureness/next-reading.ts';
import { boughtByNext, boughtInWords, enoughInWords, narrowingInWords } from './next-reading.ts';
import { shopWriter } from './writer.ts';

const inches = shopWriter({ system: 'inch', tapeStep: '1/8 in', weighsIn: 'g', temperatureIn: undefined });
const inch = 0.0254;
/** Guide 2's ± is wider than guide 1's, but it may move four inches; guide 1 may move half of one. */
const next = {
  plusMinusM: [0.75 * inch, 2 * inch],
  slackM: [0.5 * inch, 4 * inch],
  options: [{ plusMinusM: [0.5 * inch, 1 * inch], readings: 5 }],
} as unknown as NextReading;

test('what the next readings buy is told of the mark whose ± is widest for its slack', () => {
  const bought = boughtByNext(next);
  expect(bought).toMatchObject({ mark: 0, readings: 5 });
  expect(bought && boughtInWords(bought, inches).replaceAll('⁄', '/')).toBe(
    'Marks now known to ±3/4 in where it matters (guide 1, which may move ±1/2 in); 5 more readings: ±1/2 in.',
  );
});

test('where every mark is held, or nothing is on offer, nothing is promised', () => {
  expect(boughtByNext({ ...next, plusMinusM: [0, 0] })).toBeUndefined();
  expect(boughtByNext({ ...next, options: [] })).toBeUndefined();
});

test('a ± that stays as it is on the tape is not told as a gain', () => {
  const option = { ...next.options[0], plusMinusM: [0.74 * inch, 1.99 * inch] };
  const bought = boughtByNext({ ...next, options: [option] });
  expect(bought && boughtInWords(bought, inches)).toMatch(/; 5 more readings would not narrow that\.$/);
  expect(narrowingInWords(option, next, inches)).toMatch(/guide 1 stays at ±3⁄4 in \(slack/);
});

describe('where the start is kept because too few blanks speak for other marks', () => {
  const kept = (chance: number, enough?: NextReading['enough']): NextReading => {
    const option = { ...next.options[0], settles: { chance, gain: 0.08 * chance } };
    const tenMinutes = { option, gain: 0.08 * chance };
    return {
      ...next,
      options: [option],
      tenMinutes,
      enough,
      unsure: { better: 83, worse: 11, of: 100, wanted: 87, oneHold: true },
      costOfKeeping: 0.3,
    };
  };

  test('ten minutes are told by the chance that the marks move, and what is then won', () => {
    expect(enoughInWords(kept(0.34), inches)).toBe(
      'Keep the start for now, but no thread yet: other marks may be better. Other marks are better on 83 of 100 blanks that fit your readings. With the clamp in one place, 87 of 100 are wanted. On 11 they are worse by over 3 %. ' +
        'Ten more minutes move the marks about 3 times in 10. Then the worst reading falls by about 8 %.',
    );
  });

  test('marks that are all but certain to move are not told in tenths', () => {
    expect(enoughInWords(kept(0.97), inches)).toMatch(/Ten more minutes move the marks almost every time\./);
  });

  test('a reading that settles it is not called one that tells little', () => {
    const { options } = kept(0.34);
    expect(narrowingInWords({ ...options[0], plusMinusM: next.plusMinusM }, next, inches)).toMatch(
      /^It narrows no mark: guide 1 stays/,
    );
    expect(narrowingInWords({ ...options[0], plusMinusM: [0.68 * inch, 2 * inch] }, next, inches)).toMatch(
      /^This narrows guide 1 most/,
    );
  });

  test('a chance too small to read on for is told too', () => {
    const words = enoughInWords(kept(0.03, 'settles-little'), inches);
    expect(words).toMatch(/^Keep the start: more of such readings would hardly show/);
    expect(words).toMatch(/83 of 100 blanks .* less than 1 time in 20\.$/);
  });
});
