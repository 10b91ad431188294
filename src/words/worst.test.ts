import { expect, test } from 'vitest';
import type { Metric } from '../engine/layout/criteria.ts';
import { criterionWords } from './criteria.ts';
import { worstBriefly } from './worst.ts';
import { shopWriter } from './writer.ts';

const mm = shopWriter({ system: 'mm' });
const lens = (metric: Metric, value: number, limit: number) => {
  const worstAt = { metric, load: 0, index: 1, value, limit, ratio: value / limit };
  return Object.values(worstBriefly({ worstAt, ruled: [{ ruleGapM: 0 }, { ruleGapM: 0.02 }] }, mm));
};

test('the worst reading in three short lines: the figure alone is large', () => {
  expect(lens('lineAngle', 0.3, 0.2618)).toEqual(['17.2°', 'limit 15°', 'guide 1']);
  expect(lens('gap', 0.011, 0.01)).toEqual(['20 mm', 'gap, limit 19 mm', 'between guides 1 and 2']);
  const added = ['0.095', 'bend added, limit 0.037 1/m', 'between guides 1 and 2'];
  expect(lens('extraBend', 0.095, 0.037)).toEqual(added);
  expect(lens('intoBlank', 0.002, 0.001)).toEqual([
    '2 mm',
    'into blank, limit 1 mm',
    'between guides 1 and 2',
  ]);
});

test('a gap with the ring’s height in it is not called as one above the ring', () => {
  const { besideLimit, name, figure } = criterionWords.gap;
  const worst = { value: 0.009, limit: 0.01 };
  expect(besideLimit(worst, { ruleGapM: 0.018 }, mm)).toBe('gap by rule 18 mm of 19 mm');
  expect(`${name} ${figure(worst.value, mm)}`).toBe('gap above the ring 9 mm');
});
