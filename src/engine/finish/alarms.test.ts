import { expect, test } from 'vitest';
import { alarmsDue } from './alarms.ts';
import { commonTimes, type Due } from './schedule.ts';

const hourMs = 3_600_000;
const coat = (id: string, atHours: number) => ({
  id,
  brushedAtMs: atHours * hourMs,
  roomC: commonTimes.statedC,
});
const told = (coats: ReturnType<typeof coat>[], nowHours: number, heard: Due[] = []) =>
  alarmsDue(
    { coats, times: commonTimes, coatsInAll: 2, heard: (_, due) => heard.includes(due) },
    nowHours * hourMs,
  ).map(({ number, due }) => `${number} ${due}`);

test('what a later alarm of its kind has overtaken is not told, heard or not', () => {
  const first = [coat('a', 0)];
  expect(told(first, 0.1)).toEqual([]);
  expect(told(first, 1)).toEqual(['1 brushing-ends']);
  expect(told(first, 7)).toEqual(['1 stop-turning']);
  expect(told(first, 7, ['stop-turning'])).toEqual([]);
  expect(told(first, 13, ['stop-turning'])).toEqual(['1 recoat-from']);
  expect(told(first, 200)).toEqual(['1 fish', '1 recoat-until']);
});

test('on the last coat that is planned nothing is told about another, nor about the coat below', () => {
  expect(told([coat('a', 0), coat('b', 24)], 24 + 200)).toEqual(['2 fish']);
  expect(told([coat('a', 0), coat('b', 24)], 24.1)).toEqual([]);
});
