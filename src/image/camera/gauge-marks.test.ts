import { expect, test } from 'vitest';
import { cameraChoice, cameraFor } from '../../../test/render/camera.ts';
import { randomFrom } from '../../../test/render/random.ts';
import { cameraFit } from './camera-fit.ts';
import { cameraBackProject } from './camera-model.ts';
import type { CameraFitInput } from './camera-problem.ts';
import { gaugedCameraFit } from './gauge-marks.ts';

type Fit = (input: CameraFitInput) => ReturnType<typeof cameraFit>;

const frame = { left: -0.2, right: 2.6, bottom: -0.9, top: 0.5 };
const picture = { widthPx: 4000, heightPx: 3000 };

/** Six marks told `toldM` wrong and tapped a pixel off; how far places of the wall come out at most, m. */
function worstM(seed: number, toldM: number, fit: Fit) {
  const random = randomFrom(seed);
  const camera = cameraFor(cameraChoice(random, picture.widthPx, picture.heightPx, frame));
  const places = [-0.1, 1.2, 2.5].flatMap((x) => [-0.8, 0.4].map((y) => ({ x, y })));
  const marks = places.map((place) => {
    const { x, y } = camera.project(place);
    return {
      plane: { x: place.x + toldM * random.normal(), y: place.y + toldM * random.normal() },
      pixel: { x: x + random.normal(), y: y + random.normal() },
    };
  });
  const fitted = fit({ marks, ...picture });
  const between = [0, 0.6, 1.2, 1.8, 2.4].flatMap((x) => [-0.7, -0.2, 0.3].map((y) => ({ x, y })));
  return Math.max(
    ...between.map((place) => {
      const at = cameraBackProject(fitted.camera, camera.project(place));
      return Math.hypot(at.x - place.x, at.y - place.y);
    }),
  );
}
const seeds = Array.from({ length: 25 }, (_, i) => 52000 + i);

const squares = (toldM: number, fit: Fit) =>
  seeds.reduce((sum, seed) => sum + worstM(seed, toldM, fit) ** 2, 0);

test('marks told badly are not read as another lens', () => {
  expect(squares(0.005, gaugedCameraFit)).toBeLessThan(0.5 * squares(0.005, cameraFit));
  expect(Math.max(...seeds.map((seed) => worstM(seed, 0.002, gaugedCameraFit)))).toBeLessThan(0.008);
});

test('marks told truly cost nothing by being gauged', () => {
  expect(squares(0, gaugedCameraFit)).toBeLessThan(1.05 * squares(0, cameraFit));
});
