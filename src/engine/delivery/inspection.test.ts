import { expect, test } from 'vitest';
import { inspectionList } from './inspection.ts';

const toleranceOf = (id: string, system: 'mm' | 'inch', lengthM?: number) =>
  inspectionList({ lengthM, balanceFromButtM: lengthM && 0.4 }, system).find((item) => item.id === id)!
    .tolerance;

test('lengths stand in the units of the shop', () => {
  expect(toleranceOf('length', 'mm', 2.7432)).toBe('2743 mm ± 5 mm');
  expect(toleranceOf('balance', 'mm', 2.7432)).toBe('400 mm ± 15 mm');
  // 9 ft are 108 in; a quarter and five eighths are 6.4 and 15.9 mm.
  expect(toleranceOf('length', 'inch', 2.7432)).toBe('108 in ± 1/4 in');
  expect(toleranceOf('balance', 'inch', 2.7432)).toBe('15 3/4 in ± 5/8 in');
});

test('a length that is not known leaves its tolerance', () => {
  expect(toleranceOf('length', 'inch')).toBe('± 1/4 in');
  expect(inspectionList().find(({ id }) => id === 'length')!.tolerance).toBe('± 5 mm');
});
