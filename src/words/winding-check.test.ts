import { expect, test } from 'vitest';
import { chooseWindingCheck } from '../engine/handle/winding-check.ts';
import { checkSizesInWords } from './winding-check.ts';
import { shopWriter } from './writer.ts';

const mm = shopWriter({ system: 'mm' });

test('a check past the bore sought says by how much', () => {
  expect(checkSizesInWords(chooseWindingCheck(0.007), mm)).toBe('18/64 in, or 7.5 mm (0.2 mm wide)');
  expect(checkSizesInWords(chooseWindingCheck(0.00933), mm)).toBe('24/64 in, or 9.5 mm');
  expect(checkSizesInWords(chooseWindingCheck(0.007), shopWriter({ system: 'inch' }))).toMatch(
    /7\.5 mm \(0\.008 in wide\)/,
  );
});
