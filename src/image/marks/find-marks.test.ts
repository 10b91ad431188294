import { describe, expect, test } from 'vitest';
import { fillPolygon } from '../../../test/render/canvas.ts';
import { type MarkScene, type MarkSceneChoice, paintMarkScene } from '../../../test/render/mark-scene.ts';
import { strokeFlat } from '../../../test/render/stroke.ts';
import type { Pixels } from '../pixels.ts';
import { type FoundMark, findMarks } from './find-marks.ts';

const numbers = [1, 4, 7, 10, 13, 16, 19, 22, 24, 2, 5, 8];

function scene(change: Partial<MarkSceneChoice>): MarkScene {
  return paintMarkScene({ seed: 1, widthPx: 900, heightPx: 675, numbers, radiusM: 0.085, ...change });
}

function pixelsOf({ picture: { width, height, rgb } }: MarkScene): Pixels {
  return { width, height, channels: 3, data: rgb };
}

/** Found marks with the right number within 3 px of the truth, and what was found besides. */
function compare(painted: MarkScene, found: readonly FoundMark[]) {
  const right = painted.marks.flatMap((mark) => {
    const hit = found.find(
      ({ number, centrePx: [x, y] }) =>
        number === mark.number && Math.hypot(x - mark.centrePx.x, y - mark.centrePx.y) < 3,
    );
    return hit ? [{ mark, hit }] : [];
  });
  const offs = right.map(({ mark, hit }) =>
    Math.hypot(hit.centrePx[0] - mark.centrePx.x, hit.centrePx[1] - mark.centrePx.y),
  );
  const rmsPx = Math.sqrt(offs.reduce((sum, off) => sum + off * off, 0) / Math.max(1, offs.length));
  return { right, rmsPx, invented: found.length - right.length };
}

describe('marks in a picture', () => {
  test.each([
    ['as they are printed', false],
    ['as they were printed before', true],
  ])(
    '%s: on clean renderings all are found, none invented, middles to a tenth of a pixel',
    (_, printedEarlier) => {
      for (const seed of [1, 2]) {
        const painted = scene({ seed, clean: true, printedEarlier });
        const { right, rmsPx, invented } = compare(painted, findMarks(pixelsOf(painted)));
        expect([right.length, invented]).toEqual([numbers.length, 0]);
        expect(rmsPx).toBeLessThan(0.1);
      }
    },
  );

  test('with clutter, grain, shadow and uneven light nearly all are found and none invented', () => {
    let found = 0;
    for (const seed of [3, 4]) {
      const painted = scene({ seed });
      const { right, rmsPx, invented } = compare(painted, findMarks(pixelsOf(painted)));
      expect(invented, `seed ${seed}`).toBe(0);
      expect(rmsPx).toBeLessThan(0.3);
      for (const { mark, hit } of right) {
        const [x, y] = hit.cornersPx[1];
        expect(Math.hypot(x - mark.topPx.x, y - mark.topPx.y)).toBeLessThan(0.1 * mark.radiusPx);
      }
      found += right.length;
    }
    expect(found).toBeGreaterThanOrEqual(0.95 * 2 * numbers.length);
  });

  test('pictures full of other things hold no mark', () => {
    for (const seed of [11, 12]) expect(findMarks(pixelsOf(scene({ seed, numbers: [] })))).toEqual([]);
  });

  test('a mirrored picture is noticed at every mark', () => {
    const painted = scene({ seed: 7 });
    const { width, height, channels, data } = pixelsOf(painted);
    const flipped = new Uint8Array(data.length);
    for (let y = 0; y < height; y++)
      for (let x = 0; x < width; x++)
        for (let c = 0; c < 3; c++)
          flipped[3 * (y * width + x) + c] = data[3 * (y * width + width - 1 - x) + c];
    const found = findMarks({ width, height, channels, data: flipped });
    expect(found.length).toBeGreaterThanOrEqual(numbers.length - 1);
    expect(found.every(({ mirrored }) => mirrored)).toBe(true);
    for (const { number, centrePx } of found) {
      const mark = painted.marks.find((one) => one.number === number)!;
      expect(Math.abs(width - 1 - centrePx[0] - mark.centrePx.x)).toBeLessThan(0.5);
    }
  });
});

describe('marks partly hidden', () => {
  test('behind a thin cable the number is right or the mark is left out', () => {
    const painted = scene({
      seed: 8,
      cover: ({ canvas, project, random }) => {
        const at = random.between(-0.9, 0.9);
        const ends = [-1.5, 1.5].map((x) => project({ x, y: at + 0.3 * x }));
        const line = Array.from({ length: 60 }, (_, i) => ({
          x: ends[0].x + ((ends[1].x - ends[0].x) * i) / 59,
          y: ends[0].y + ((ends[1].y - ends[0].y) * i) / 59,
        }));
        strokeFlat(canvas, line, () => 1.2, { red: 0.05, green: 0.05, blue: 0.05 });
      },
    });
    const { right, invented } = compare(painted, findMarks(pixelsOf(painted)));
    expect(invented).toBe(0);
    expect(right.length).toBeGreaterThanOrEqual(numbers.length / 2);
  });

  test.each([0.15, 0.5])('with %s of it covered no other number is read', (share) => {
    const painted = scene({
      seed: 9,
      cover: ({ canvas, project, random }) => {
        const tone = random.between(0.05, 0.8);
        const edge = 1.1 - 2.2 * share;
        const corners = [
          { x: edge, y: -1.3 },
          { x: 1.4, y: -1.3 },
          { x: 1.4, y: 1.3 },
          { x: edge, y: 1.3 },
        ];
        fillPolygon(canvas, corners.map(project), { red: tone, green: tone, blue: tone });
      },
    });
    const { invented } = compare(painted, findMarks(pixelsOf(painted)));
    expect(invented).toBe(0);
  });
});
