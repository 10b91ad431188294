/** A bar clamped across the blank, a weight at its end: how far it turns, left and right. */
import { angle, length, many, mass, order, rule, single } from './declare.ts';

export const twistTest = single('Twist test', {
  barFromTip: length('tip to the bar', [0, 10], { usual: 0 }),
  clampFromTip: length('tip to the clamp', [0, 10], { empty: 'front of the grip' }),
});

export const twists = many('Twist reading', {
  order: order(),
  hung: mass('weight at the bar’s end', [0, 50], { example: 0.1 }),
  arm: rule('blank’s middle to the weight', [0, 1], { example: 0.2 }),
  left: angle('bar down, weight on the left', { example: 0.2 }),
  right: angle('bar down, weight on the right', { example: 0.2 }),
});
