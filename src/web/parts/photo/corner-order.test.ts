import { expect, test } from 'vitest';
import { cornerOrder } from './corner-order.ts';

const square: [number, number][] = [
  [100, 900],
  [1000, 950],
  [980, 80],
  [120, 110],
];

test('four taps in any order are the same corners', () => {
  const orders = [0, 1, 2, 3].flatMap((a) =>
    [0, 1, 2, 3].flatMap((b) => [0, 1, 2, 3].map((c) => [a, b, c, 6 - a - b - c])),
  );
  for (const order of orders.filter((list) => new Set(list).size === 4)) {
    const taps = order.map((i) => square[i]);
    expect(cornerOrder(taps)?.map((i) => taps[i])).toEqual(square);
  }
});

test('three on a line, or one within the others, are no corners', () => {
  expect(cornerOrder([...square.slice(0, 2), [550, 925], square[2]])).toBeUndefined();
  expect(cornerOrder([square[0], square[1], square[2], [700, 600]])).toBeUndefined();
  expect(cornerOrder(square.slice(0, 3))).toBeUndefined();
});
