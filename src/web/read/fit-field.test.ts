import { expect, it } from 'vitest';
import type { Bench } from '../../engine/bench/bench.ts';
import { fitField } from './fit-field.ts';

const rows = [{ setupId: 's', tests: [{ testId: 't', readings: ['r0', 'r1'] }] }];
const bench = { sections: [{ id: 'top' }, { id: 'low' }] } as unknown as Bench;

it.each([
  ['setups[0].tests[0].readings[1].dropM', 'readings/r1/drop'],
  ['setups[0].tests[0]', 'tests/t/hung'],
  ['setups[0]', 'setups/s/clampFromTip'],
  ['blank.sections[1].massKg', 'sections/low/mass'],
  ['blank.sections[0].balanceFromTipM', 'sections/top/balanceFromOwnTip'],
  ['blank.massKg', 'blank/-/mass'],
])('what is odd at %s of the fit is shown at the field %s', (path, field) => {
  expect(fitField(path, rows, bench)).toBe(field);
});
