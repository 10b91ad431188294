import { expect, test } from 'vitest';
import { placeOffer } from './place-offer.ts';

test('placing is not offered beside the word that these marks are as even as the blank gets', () => {
  expect(placeOffer(false, true, 'as-even-as-it-gets')).toBe('as-even');
  expect(placeOffer(false, true, 'beyond-limits')).toBe('as-even');
  expect(placeOffer(true, true, 'as-even-as-it-gets')).toBe('placed');
  // the start’s marks become ours by placing
  expect(placeOffer(false, false, 'as-even-as-it-gets')).toBe('offered');
});

test('marks that are kept for want of sureness are offered once, and not called placed', () => {
  expect(placeOffer(true, false, 'keep')).toBe('keep');
  expect(placeOffer(true, true, 'keep')).toBe('as-even');
  // a start that breaks a rule is mended by placing
  expect(placeOffer(false, false, 'keep')).toBe('first');
});

test('it is what to do first only where the headline says so', () => {
  expect(placeOffer(false, true, 'place-anew')).toBe('first');
  expect(placeOffer(false, true, 'move')).toBe('offered');
  expect(placeOffer(false, true, undefined)).toBe('offered');
});
