import { expect, test } from 'vitest';
import { commonTimes } from '../../../engine/finish/schedule.ts';
import { nextOnFinish } from './next-on-finish.ts';

const dayMs = 86_400_000;
const start = Date.UTC(2026, 4, 4, 9);
const coat = (id: string, brushedAtMs: number) => ({ id, brushedAtMs, roomC: commonTimes.statedC });
const at = (nowMs: number, brushed: number[], open: string[] = []) =>
  nextOnFinish(
    {
      coats: brushed.map((ms, i) => coat(`c${i}`, ms)),
      times: commonTimes,
      coatsInAll: Math.max(2, brushed.length),
      batch: {},
    },
    nowMs,
    open,
  );

test('before the first coat it leads to what nobody has looked at', () => {
  expect(at(start, [], ['levelChecked', 'dustFree']).at).toBe('finish/-/levelChecked');
  expect(at(start, [])).toEqual({ words: 'Mix, and brush the first coat on.' });
});

test('a coat is turned, waited for, covered in time, or scuffed', () => {
  const words = (days: number) => at(start + days * dayMs, [start]).words;
  expect(words(0.1)).toMatch(/^Keep it turning until/);
  expect(words(0.4)).toMatch(/^Wait\. Coat 2 may go on from/);
  expect(words(1)).toMatch(/^Brush coat 2 on before/);
  expect(words(3)).toMatch(/^Scuff .* brush coat 2 on/);
});

test('after the last coat that is planned nothing is asked but to wait, then to inspect', () => {
  const brushed = [start, start + dayMs];
  expect(at(start + 4 * dayMs, brushed)).toMatchObject({
    goOn: 'papers',
    words: expect.stringMatching(/cure until/),
  });
  expect(at(start + 8 * dayMs, brushed)).toMatchObject({
    goOn: 'papers',
    words: expect.stringMatching(/is cured/),
  });
});
