import { describe, expect, test } from 'vitest';
import { cameraChoice, cameraFor } from '../../../test/render/camera.ts';
import type { Place } from '../../../test/render/canvas.ts';
import { type Random, randomFrom } from '../../../test/render/random.ts';
import { cameraFit } from './camera-fit.ts';
import { cameraBackProject, cameraProject } from './camera-model.ts';
import type { Mark } from './camera-problem.ts';

const widthPx = 4000;
const heightPx = 3000;
const frame = { left: -0.2, right: 2.6, bottom: -0.3, top: 1.6 };

interface Seen {
  marks: Mark[];
  inside: { pixel: Place; plane: Place }[];
}

/** Marks round the frame and places inside it, seen by the renderer's camera, which shares no code with ours. */
function seen(random: Random, count: number, tapPx: number, mostK1 = 0.04): Seen {
  const choice = cameraChoice(random, widthPx, heightPx, frame);
  const camera = cameraFor({ ...choice, k1: random.between(-mostK1, mostK1), k2: 0 });
  const round = [
    [0, 0],
    [1, 0],
    [1, 1],
    [0, 1],
    [0.5, 1],
    [0.5, 0],
    [0, 0.5],
    [1, 0.5],
  ].slice(0, count);
  const marks = round.map(([u, v]) => {
    const plane = {
      x: -0.1 + 2.6 * u + random.between(-0.05, 0.05),
      y: -0.2 + 1.7 * v + random.between(-0.05, 0.05),
    };
    const at = camera.project(plane);
    return { plane, pixel: { x: at.x + tapPx * random.normal(), y: at.y + tapPx * random.normal() } };
  });
  const inside = Array.from({ length: 40 }, () => {
    const plane = { x: random.between(0, 2.4), y: random.between(-0.1, 1.4) };
    return { plane, pixel: camera.project(plane) };
  });
  return { marks, inside };
}

function worstM(scene: Seen): number {
  const fit = cameraFit({ marks: scene.marks, widthPx, heightPx });
  return Math.max(
    ...scene.inside.map(({ pixel, plane }) => {
      const at = cameraBackProject(fit.camera, pixel);
      return Math.hypot(at.x - plane.x, at.y - plane.y);
    }),
  );
}

describe('camera from marks', () => {
  test('projection and back-projection are inverse', () => {
    const camera = cameraFit({ marks: seen(randomFrom(3), 8, 0).marks, widthPx, heightPx }).camera;
    for (const pixel of [
      { x: 12, y: 7 },
      { x: 3900, y: 2950 },
      { x: 2000, y: 1500 },
    ]) {
      const again = cameraProject(camera, cameraBackProject(camera, pixel));
      expect(Math.hypot(again.x - pixel.x, again.y - pixel.y)).toBeLessThan(1e-6);
    }
  });

  test('six marks tapped to 0.4 px fix a distorted picture to 1.5 mm', () => {
    for (let seed = 1; seed <= 15; seed++)
      expect(worstM(seen(randomFrom(seed), 6, 0.4))).toBeLessThan(1.5e-3);
  });

  test('four marks fix a picture without distortion to 3 mm', () => {
    for (let seed = 1; seed <= 15; seed++)
      expect(worstM(seen(randomFrom(seed), 4, 0.4, 0))).toBeLessThan(3e-3);
  });

  test('the stated error covers the true one', () => {
    let inside = 0;
    let all = 0;
    for (let seed = 20; seed < 40; seed++) {
      const scene = seen(randomFrom(seed), 6, 1);
      const fit = cameraFit({ marks: scene.marks, widthPx, heightPx });
      for (const { pixel, plane } of scene.inside) {
        const at = cameraBackProject(fit.camera, pixel);
        all++;
        if (Math.hypot(at.x - plane.x, at.y - plane.y) < 2 * fit.sigmaAtM(pixel)) inside++;
      }
    }
    expect(inside / all).toBeGreaterThan(0.85);
  });

  test('a picture taken from behind the plane is fitted as well', () => {
    const scene = seen(randomFrom(5), 6, 0);
    const flip = (at: Place): Place => ({ x: widthPx - 1 - at.x, y: at.y });
    const mirrored = {
      marks: scene.marks.map((mark) => ({ ...mark, pixel: flip(mark.pixel) })),
      inside: scene.inside.map((one) => ({ ...one, pixel: flip(one.pixel) })),
    };
    expect(worstM(mirrored)).toBeLessThan(1e-3);
  });
});
