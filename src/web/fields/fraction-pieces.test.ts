import { expect, test } from 'vitest';
import { fractionPieces } from './fraction-pieces.ts';

test('a fraction is cut out, a guide of size 1/0 is not one', () => {
  expect(fractionPieces('move it 12 3/16 in')).toEqual(['move it 12 ', '3/16', ' in']);
  expect(fractionPieces('4 of size 1/0, 3⁄8 in high')).toEqual(['4 of size 1/0, ', '3⁄8', ' in high']);
});
