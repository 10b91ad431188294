import { expect, test } from 'vitest';
import { placeFanNames } from './fan-names.ts';
import type { Fan } from './line-fans.ts';

const fan = (x: number, isOver = true): Fan => ({
  turn: '',
  limit: '',
  label: { x, y: 60 },
  outwardsRad: -Math.PI / 2,
  isOver,
});
const size = { lengthPx: 26 };
const sheet = { widthPx: 360, heightPx: 240 };

test('figures of fans that stand side by side do not cover each other', () => {
  const places = placeFanNames(
    [100, 130, 160].map((x) => fan(x)),
    ['22.3°', '20.7°', '16.1°'],
    sheet,
    size,
  );
  // nor the fans, which end 11 px before their labels
  for (const { yPx } of places.map((place) => place!)) expect(yPx).toBeLessThan(71 - 9);
  places.forEach((a, i) => {
    for (const b of places.slice(i + 1))
      expect(Math.abs(a!.xPx - b!.xPx) >= 52 || Math.abs(a!.yPx - b!.yPx) >= 18).toBe(true);
  });
});

test('one alone stands just beyond its fan; none stands where nothing is said', () => {
  const [alone, silent, straight] = placeFanNames(
    [fan(100), fan(200), undefined],
    ['20.7°', '', ''],
    sheet,
    size,
  );
  expect(alone!.xPx).toBeCloseTo(100, 6);
  expect(Math.abs(alone!.yPx - 60)).toBeLessThan(3);
  expect([silent, straight]).toEqual([undefined, undefined]);
});
