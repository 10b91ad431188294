import { expect, test } from 'vitest';
import type { FinishEffects } from '../engine/flow/finish-effects.ts';
import { addedInWords, finishedRows } from './finished-rod.ts';
import { shopWriter } from './writer.ts';

const effects: FinishEffects = {
  addedKg: { guides: 0.0026, thread: 0.0004, finish: 0.0031 },
  firstHz: { bare: 3.24, loose: 2.72, bonded: 2.75 },
  tipDropM: { bare: 0.867, loose: 0.87, bonded: 0.857 },
  hungKg: 0.0986,
  worst: { bare: 0.98, loose: 0.981, bonded: 0.979 },
};

test('the finished rod is a range where the wraps’ stiffness decides, one figure where it does not show', () => {
  const rows = finishedRows(effects, shopWriter({ system: 'mm', tapeStep: '1 mm' }));
  expect(rows.map(({ bare, finished }) => [bare, finished])).toEqual([
    ['3.24 Hz', '2.72 to 2.75 Hz'],
    ['867 mm', '857 to 870 mm'],
    ['98 %', '98 %'],
  ]);
});

test('an inch shop reads no metric length, and a blank without mass has no frequency', () => {
  const w = shopWriter({ system: 'inch', weighsIn: 'oz' });
  const rows = finishedRows({ ...effects, firstHz: undefined }, w);
  expect(rows[0]).toEqual({
    name: 'tip drop under 3.5 oz, level',
    bare: '34 1⁄8 in',
    finished: '33 3⁄4 to 34 1⁄4 in',
  });
  expect(addedInWords(effects, w)).toMatch(/^Guides add 0.09\d* oz, thread 0.01\d* oz, finish 0.1\d* oz\./);
});
