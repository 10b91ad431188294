/** A dark line on a light ground, drawn by the share of each pixel that it covers, and hidden for a stretch. */
import { expect, test } from 'vitest';
import { seededNormal, seededRandom } from '../../engine/numerics/seeded-random.ts';
import type { Pixels } from '../pixels.ts';
import { refineCentreline } from './refine-centreline.ts';

const [width, height, y0] = [1200, 80, 39.3];
const hidden = [500, 800] as const;

function picture(): Pixels {
  const normal = seededNormal(seededRandom(5));
  const data = new Uint8Array(width * height);
  for (let x = 0; x < width; x++) {
    const isHidden = x > hidden[0] && x < hidden[1];
    for (let y = 0; y < height; y++) {
      const covered = isHidden ? 0 : Math.max(0, Math.min(1, 3.5 - Math.abs(y - y0)));
      data[y * width + x] = Math.max(0, Math.round(180 - 120 * covered + 2 * normal()));
    }
  }
  return { width, height, channels: 1, data };
}

test('where no edge was seen a place is as uncertain as it is far from the next that was', () => {
  const path = Array.from({ length: width / 8 }, (_, i) => ({ x: 8 * i, y: y0 + 2 * Math.sin(i / 9) }));
  const { line, sigmaPx } = refineCentreline(picture(), path, path[0], path[path.length - 1]);
  const at = (x: number) => sigmaPx[line.x.findIndex((one) => one >= x)];
  expect(Math.max(at(200), at(400), at(900), at(1100))).toBeLessThan(0.5);
  expect(at(650)).toBeGreaterThan(3);
  expect(at(560)).toBeGreaterThan(0.5);
  expect(at(560)).toBeLessThan(at(650));
});
