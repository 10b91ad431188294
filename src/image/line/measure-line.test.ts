import { describe, expect, test } from 'vitest';
import { canvasOf, type Place } from '../../../test/render/canvas.ts';
import { develop } from '../../../test/render/develop.ts';
import { randomFrom } from '../../../test/render/random.ts';
import { strokeFlat, strokeTube } from '../../../test/render/stroke.ts';
import { paintWall } from '../../../test/render/wall.ts';
import type { Pixels } from '../pixels.ts';
import { type LineRequest, measureLine } from './measure-line.ts';

/** 1000 px a metre, y up in the plane. */
const plane: LineRequest['plane'] = {
  toPlane: ({ x, y }) => ({ x: x / 1000, y: -y / 1000 }),
  toPixel: ({ x, y }) => ({ x: 1000 * x, y: -1000 * y }),
};
const lamp = { sideways: 0.3, ambient: 0.4, diffuse: 0.5, gloss: 0.1, glossWidth: 0.3 };

/** A bent blank, rings 9 px off it, and a thin line through them; taps are 2 px off. */
function scene(seed: number, lineTone: number | undefined) {
  const random = randomFrom(seed);
  const canvas = canvasOf(900, 480);
  paintWall(canvas, random, { red: 0.5, green: 0.48, blue: 0.45 });
  const blankAt = (x: number): Place => ({ x, y: 90 + 0.00042 * x * x });
  const axis = Array.from({ length: 440 }, (_, i) => blankAt(20 + 2 * i));
  const radius = (along: number) => 4 - (2.6 * along) / 439;
  const rings = [120, 330, 520, 680, 860].map((x) => ({ x, y: blankAt(x).y + 9 + random.between(-1, 1) }));
  if (lineTone !== undefined) {
    const line = rings.slice(1).flatMap((to, i) =>
      Array.from({ length: 100 }, (_, k) => ({
        x: rings[i].x + ((to.x - rings[i].x) * k) / 100,
        y: rings[i].y + ((to.y - rings[i].y) * k) / 100,
      })),
    );
    const ink = { red: lineTone, green: lineTone, blue: lineTone };
    strokeFlat(canvas, [...line, rings[4]], () => 0.5, ink);
  }
  strokeTube(canvas, axis, radius, () => ({ red: 0.05, green: 0.05, blue: 0.06 }), lamp);
  for (const { x, y } of rings) {
    const ring = [-4, 4].map((off) => ({ x, y: y + off }));
    strokeFlat(canvas, ring, () => 0.7, { red: 0.1, green: 0.1, blue: 0.1 });
  }
  const { width, height, rgb } = develop(canvas, random, {
    blurPx: 0.8,
    grain: 3,
    sharpen: 0.3,
    exposure: 1,
  });
  const picture: Pixels = { width, height, channels: 3, data: rgb };
  const ringsPx = rings.map(({ x, y }) => [x + 2 * random.normal(), y + 2 * random.normal()] as const);
  const blank = axis.map(({ x, y }, i) => ({ px: [x, y] as const, halfWidthPx: radius(i) }));
  return { picture, rings, request: { ringsPx, plane, blank } };
}

function trueAngles(rings: readonly Place[]): number[] {
  return rings.slice(1).map((to, i) => Math.atan2(-(to.y - rings[i].y), to.x - rings[i].x));
}

describe('the line through tapped rings', () => {
  test.each([0.95, 0.03])(
    'of tone %s: directions to 0.1°, rings across to 0.4 px, taps being 2 px off',
    (tone) => {
      for (const seed of [1, 2]) {
        const { picture, rings, request } = scene(seed, tone);
        const { spans, rings: found } = measureLine(request, picture);
        const angles = trueAngles(rings);
        for (const [i, span] of spans.entries()) {
          expect(span.seen).toBe(true);
          expect(Math.abs(span.angleRad - angles[i])).toBeLessThan((0.1 * Math.PI) / 180);
        }
        for (const [i, ring] of found.entries()) {
          const along = angles[Math.min(i, angles.length - 1)];
          const dx = ring.centrePx[0] - rings[i].x;
          const dy = ring.centrePx[1] - rings[i].y;
          expect(Math.abs(dx * Math.sin(along) + dy * Math.cos(along))).toBeLessThan(0.4);
          if (i === 0 || i === found.length - 1) continue;
          const truth = Math.abs(angles[i] - angles[i - 1]);
          expect(Math.abs((ring.lineAngleRad ?? 9) - truth)).toBeLessThan((0.15 * Math.PI) / 180);
          expect(ring.lineAngleSigmaRad).toBeLessThan(0.005);
        }
      }
    },
  );

  test('where there is no line it says so, leaves the taps where they are, and widens its error', () => {
    const { picture, request } = scene(4, undefined);
    const { spans, rings } = measureLine(request, picture);
    expect(spans.filter(({ seen }) => seen)).toEqual([]);
    for (const [i, { centrePx }] of rings.entries()) {
      expect(centrePx[0]).toBeCloseTo(request.ringsPx[i][0], 6);
      expect(centrePx[1]).toBeCloseTo(request.ringsPx[i][1], 6);
    }
    expect(spans[0].sigmaRad).toBeGreaterThan(0.01);
  });
});
