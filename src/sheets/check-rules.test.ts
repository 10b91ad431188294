import { expect, test } from 'vitest';
import { hasRules } from './check-rules.ts';
import { orderSheet } from './order-sheet.ts';
import { wallMarksSheet } from './wall-marks-sheet.ts';

const at = { paper: 'a4', stamp: 'rod' } as const;

test('a sheet that is laid on the rod asks to be measured; one that is only read does not', () => {
  const read = orderSheet([], at);
  expect(hasRules([read])).toBe(false);
  expect(hasRules([read, wallMarksSheet(at)])).toBe(true);
});
