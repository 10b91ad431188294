import { expect, test } from 'vitest';
import { inspectionList } from './inspection.ts';
import { shopWriter } from './writer.ts';

const toleranceOf = (starts: string, system: 'mm' | 'inch', lengthM?: number) =>
  inspectionList({ lengthM, balanceFromButtM: lengthM && 0.4 }, shopWriter({ system })).find(({ item }) =>
    item.startsWith(starts),
  )!.tolerance;

test('lengths stand in the units of the shop', () => {
  expect(toleranceOf('Length', 'mm', 2.7432)).toBe('2743 mm ± 5 mm');
  expect(toleranceOf('Balance', 'mm', 2.7432)).toBe('400 mm ± 15 mm');
  // 9 ft are 108 in; a quarter and five eighths are 6.4 and 15.9 mm.
  expect(toleranceOf('Length', 'inch', 2.7432)).toBe('108 in ± 1/4 in');
  expect(toleranceOf('Balance', 'inch', 2.7432)).toBe('15 3/4 in ± 5/8 in');
});

test('a length that is not known leaves its tolerance', () => {
  expect(toleranceOf('Length', 'inch')).toBe('± 1/4 in');
  expect(toleranceOf('Length', 'mm')).toBe('± 5 mm');
});

test('no tolerance of an inch shop is in millimetres', () => {
  const list = inspectionList(
    { lengthM: 2.7432, massKg: 0.1 },
    shopWriter({ system: 'inch', weighsIn: 'oz' }),
  );
  expect(list.filter(({ tolerance }) => /\d (mm|g)\b/.test(tolerance))).toEqual([]);
  expect(list.find(({ item }) => item.startsWith('Mass'))?.tolerance).toBe('3.5 oz ± 0.2 oz');
});
