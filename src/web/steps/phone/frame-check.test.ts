import { expect, test } from 'vitest';
import { frameTrouble, hasMoved, type SmallFrame } from './frame-check.ts';

const [width, height] = [320, 240];
/** A wall with grain, invented. */
function wall(level: (x: number, y: number) => number, seed = 1): SmallFrame {
  let state = seed;
  const grain = () => {
    state = (state * 1103515245 + 12345) % 2147483648;
    return (6 * state) / 2147483648 - 3;
  };
  const grey = new Uint8ClampedArray(width * height);
  for (let i = 0; i < grey.length; i++) grey[i] = level(i % width, Math.floor(i / width)) + grain();
  return { width, height, grey };
}
const lineAt = (from: number) => (x: number, y: number) =>
  y - from >= 0 && y - from < 4 && x > 40 ? 30 : 150;

test('a frame half black, or wholly, is not sent; a dark wall is', () => {
  expect(frameTrouble(wall((_, y) => (y < height / 2 ? 0 : 140)))).toMatch(
    /large part of the picture is black/,
  );
  expect(frameTrouble(wall(() => 3))).toMatch(/sees nothing/);
  expect(frameTrouble(wall(() => 40))).toBeUndefined();
  expect(frameTrouble(wall(lineAt(100)))).toBeUndefined();
});

test('a blank that swings by three pixels is seen; the camera’s grain is not', () => {
  expect(hasMoved(wall(lineAt(100), 3), wall(lineAt(100), 77))).toBe(false);
  expect(hasMoved(wall(lineAt(100), 3), wall(lineAt(103), 77))).toBe(true);
});

test('a telephone that was turned is another frame', () => {
  const turned = { ...wall(() => 100), width: height, height: width };
  expect(
    hasMoved(
      wall(() => 100),
      turned,
    ),
  ).toBe(true);
});
