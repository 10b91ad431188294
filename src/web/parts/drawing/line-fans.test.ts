import { expect, test } from 'vitest';
import { fanAt } from './line-fans.ts';

const size = { clearPx: 8, lengthPx: 40 };

/** Angle between the two straight sides of a path `MfootLaA…bZ`. */
function openingOf(path: string): number {
  const [, fx, fy, ax, ay, bx, by] = (
    /^M(\S+) (\S+)L(\S+) (\S+)A\S+ \S+ 0 0 1 (\S+) (\S+)Z$/.exec(path) ?? []
  ).map(Number);
  const turn = Math.atan2(by - fy, bx - fx) - Math.atan2(ay - fy, ax - fx);
  return Math.abs(turn > Math.PI ? turn - 2 * Math.PI : turn);
}

test('a fan opens as far as the line turns, its outline as far as the limit', () => {
  const turnRad = 0.3;
  const to = { x: 100 * Math.cos(turnRad), y: 100 * Math.sin(turnRad) };
  const fan = fanAt([{ x: -100, y: 0 }, { x: 0, y: 0 }, to], turnRad, 0.26, size);
  expect(openingOf(fan?.turn ?? '')).toBeCloseTo(turnRad, 2);
  expect(openingOf(fan?.limit ?? '')).toBeCloseTo(0.26, 2);
  expect(fan?.isOver).toBe(true);
  // the line bends downwards on the screen: the fan stands above the ring
  expect(fan?.label.y).toBeLessThan(-40);
});

test('where the line runs straight there is no fan', () => {
  expect(
    fanAt(
      [
        { x: -1, y: 0 },
        { x: 0, y: 0 },
        { x: 1, y: 0 },
      ],
      0,
      0.26,
      size,
    ),
  ).toBeUndefined();
});
