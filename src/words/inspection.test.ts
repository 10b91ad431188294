import { expect, test } from 'vitest';
import { inspectionPoints } from '../engine/delivery/inspection.ts';
import { inspectionInWords } from './inspection.ts';
import { shopWriter } from './writer.ts';

const toleranceOf = (point: string, system: 'mm' | 'inch', lengthM?: number) =>
  inspectionInWords(point, { lengthM, balanceFromButtM: lengthM && 0.4 }, shopWriter({ system }))?.tolerance;

test('lengths stand in the units of the shop', () => {
  expect(toleranceOf('length', 'mm', 2.7432)).toBe('2743 mm ± 5 mm');
  expect(toleranceOf('balance', 'mm', 2.7432)).toBe('400 mm ± 15 mm');
  // 9 ft are 108 in; a quarter and five eighths are 6.4 and 15.9 mm.
  expect(toleranceOf('length', 'inch', 2.7432)).toBe('108 in ± 1/4 in');
  expect(toleranceOf('balance', 'inch', 2.7432)).toBe('15 3/4 in ± 5/8 in');
});

test('a length that is not known is what was agreed, so that its tolerance is of something', () => {
  expect(toleranceOf('length', 'inch')).toBe('as agreed ± 1/4 in');
  expect(toleranceOf('mass', 'mm')).toBe('as agreed ± 5 g');
});

test('no tolerance of an inch shop is in millimetres', () => {
  const w = shopWriter({ system: 'inch', weighsIn: 'oz' });
  const list = inspectionPoints.map((point) => inspectionInWords(point, { lengthM: 2.7432, massKg: 0.1 }, w));
  expect(list.filter((one) => !one || /\d (mm|g)\b/.test(one.tolerance))).toEqual([]);
  expect(list[inspectionPoints.indexOf('mass')]?.tolerance).toBe('3.5 oz ± 0.2 oz');
});

test('a line of the builder’s own is said by no one else', () => {
  expect(inspectionInWords(undefined, {}, shopWriter({ system: 'mm' }))).toBeUndefined();
  expect(inspectionInWords('polish', {}, shopWriter({ system: 'mm' }))).toBeUndefined();
});
