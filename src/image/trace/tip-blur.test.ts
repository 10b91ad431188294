/** Dark lines on a light ground, drawn by the share of each pixel that they cover; smeared evenly over their way. */
import { expect, test } from 'vitest';
import { seededNormal, seededRandom } from '../../engine/numerics/seeded-random.ts';
import type { Pixels } from '../pixels.ts';
import { centrelineOf } from './centreline.ts';
import { tipBlurPx } from './tip-blur.ts';

const [width, height, y0] = [1200, 90, 44.3];

/** Butt at the left, 8 px thick, to the tip, 2 px; smeared by `blurPx` at the tip, by its square towards the butt. */
function picture(blurPx: number, shelf = false): Pixels {
  const normal = seededNormal(seededRandom(5));
  const data = new Uint8Array(width * height);
  for (let x = 0; x < width; x++) {
    const share = x / width;
    const [thick, blur] = [8 - 6 * share, blurPx * share ** 2];
    for (let y = 0; y < height; y++) {
      const moments = Array.from({ length: 21 }, (_, k) => y0 + blur * (k / 20 - 0.5));
      const covered = moments.reduce((sum, at) => sum + cover(y - at, thick), 0) / moments.length;
      const ground = shelf && y > y0 + 2 ? 150 : 180;
      const grey = ground - 120 * covered + 3 * normal();
      data[y * width + x] = Math.max(0, Math.min(255, Math.round(grey)));
    }
  }
  return { width, height, channels: 1, data };
}

/** Of a pixel whose edges are blurred over 1 px more each way, as a lens does. */
function cover(off: number, thick: number): number {
  return Math.max(0, Math.min(1, thick, (0.5 * thick + 1 - Math.abs(off)) / 2));
}

const line = centrelineOf(
  Array.from({ length: width / 10 }, (_, i) => ({ x: 10 * i, y: y0 })),
  2,
);
const seen = (pixels: Pixels) => tipBlurPx(pixels, { line });

test('a still blank, before a plain wall or along a shelf, is no wider at its tip than its taper says', () => {
  expect(seen(picture(0))).toBeLessThan(0.5);
  expect(seen(picture(0, true))).toBeLessThan(0.5);
});

test('one that moved is wider by about the way its tip went', () => {
  const [six, twelve] = [seen(picture(6)), seen(picture(12))];
  expect(six).toBeGreaterThan(1.5);
  expect(six).toBeLessThan(6);
  expect(twelve).toBeGreaterThan(six + 3);
});
