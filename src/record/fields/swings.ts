/** Swings counted by hand, to be set beside what is predicted. */
import { choice, length, many, order, real } from './declare.ts';

export const swings = many('Count of swings', {
  order: order(),
  rod: choice('what swung', { bare: 'bare blank', finished: 'finished rod' }, { usual: 'bare' }),
  clampFromTip: length('held, from the tip', [0, 10], { empty: 'front of the grip' }),
  counted: real('swings counted', [1, 1000], { example: '40' }),
  seconds: real('time taken', [0.1, 3600], { unit: 's' }),
});
