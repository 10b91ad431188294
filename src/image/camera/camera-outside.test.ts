/**
 * The camera beside two solvers that share no code with it, on seeded marks tapped to 0.4 px: OpenCV 4.12
 * (@techstark/opencv-js; findHomography and projectPoints are compared in homography.test.ts, undistortPoints is not in
 * that build) and scipy's least squares (reference/scipy/camera_marks.py). CAMERA_NUMBERS=1 prints them side by side.
 */
import { spawnSync } from 'node:child_process';
import { resolve } from 'node:path';
import { beforeAll, describe, expect, test } from 'vitest';
import { pythonWithScipy } from '../../../reference/live/scipy.ts';
import { cameraChoice, cameraFor } from '../../../test/render/camera.ts';
import { randomFrom } from '../../../test/render/random.ts';
import { type OpenCv, openCvReady } from '../../../test/support/open-cv.ts';
import { cameraFit } from './camera-fit.ts';
import { cameraBackProject, cameraProject } from './camera-model.ts';
import type { Mark } from './camera-problem.ts';
import { cameraUsual } from './camera-problem.ts';
import type { Point } from './homography.ts';

const [widthPx, heightPx] = [4000, 3000];
const inside: [number, number][] = [0.1, 1.2, 2.3].flatMap((x) =>
  [-0.1, 0.6, 1.3].map((y) => [x, y] as [number, number]),
);
let cv: OpenCv;
beforeAll(async () => {
  cv = (await openCvReady()).cv;
});

function marksOf(seed: number, count: number): Mark[] {
  const random = randomFrom(seed);
  const frame = { left: -0.2, right: 2.6, bottom: -0.3, top: 1.6 };
  const camera = cameraFor(cameraChoice(random, widthPx, heightPx, frame));
  return [
    [-0.1, -0.2],
    [2.5, -0.2],
    [2.5, 1.5],
    [-0.1, 1.5],
    [1.2, 1.45],
    [1.2, -0.1],
    [0, 0.6],
    [2.4, 0.6],
  ]
    .slice(0, count)
    .map(([x, y]) => {
      const at = camera.project({ x, y });
      const off = { x: 0.4 * random.normal(), y: 0.4 * random.normal() };
      return { plane: { x, y }, pixel: { x: at.x + off.x, y: at.y + off.y } };
    });
}

const worst = (pairs: readonly (readonly [Point, Point])[]) =>
  Math.max(...pairs.map(([a, b]) => Math.hypot(a.x - b.x, a.y - b.y)));

function told(what: string, ours: number, theirs: number): void {
  if (process.env.CAMERA_NUMBERS) console.log(`${what}: ours ${ours}, theirs ${theirs}`);
}

describe('with our lens given, OpenCV’s solvePnP finds our place of the camera', () => {
  test.each([
    [1, 4],
    [2, 6],
    [3, 8],
    [4, 6],
    [5, 8],
  ])('seed %i, %i marks', (seed, count) => {
    const marks = marksOf(seed, count);
    const { camera } = cameraFit({ marks, widthPx, heightPx });
    const { focalPx, centrePx, k1, k2 } = camera;
    const object = cv.matFromArray(
      count,
      1,
      cv.CV_64FC3,
      marks.flatMap(({ plane }) => [plane.x, -plane.y, 0]),
    );
    const image = cv.matFromArray(
      count,
      1,
      cv.CV_64FC2,
      marks.flatMap(({ pixel }) => [pixel.x, pixel.y]),
    );
    const lens = cv.matFromArray(3, 3, cv.CV_64F, [focalPx, 0, centrePx.x, 0, focalPx, centrePx.y, 0, 0, 1]);
    const distortion = cv.matFromArray(1, 4, cv.CV_64F, [k1, k2, 0, 0]);
    const [turn, shift, seen] = [new cv.Mat(), new cv.Mat(), new cv.Mat()];
    cv.solvePnP(object, image, lens, distortion, turn, shift);
    const ask = cv.matFromArray(
      inside.length,
      1,
      cv.CV_64FC3,
      inside.flatMap(([x, y]) => [x, -y, 0]),
    );
    cv.projectPoints(ask, turn, shift, lens, distortion, seen);
    const pairs = inside.map(([x, y], i): [Point, Point] => {
      told(`seed ${seed}, place ${x}, ${y}: u`, cameraProject(camera, { x, y }).x, seen.data64F[2 * i]);
      return [cameraProject(camera, { x, y }), { x: seen.data64F[2 * i], y: seen.data64F[2 * i + 1] }];
    });
    expect(worst(pairs)).toBeLessThan(1e-4);
  });
});

const python = pythonWithScipy();
test.runIf(python !== undefined)('scipy’s least squares ends at our camera: cost, pixels and places', () => {
  const cases = [
    [11, 4],
    [12, 6],
    [13, 8],
    [14, 6],
  ].map(([seed, count]) => ({ seed, marks: marksOf(seed, count) }));
  const seen: [number, number][] = [
    [300, 2700],
    [2000, 1500],
    [3600, 500],
  ];
  const input = cases
    .map(({ marks }) =>
      JSON.stringify({
        marks: marks.map(({ pixel, plane }) => ({ px: [pixel.x, pixel.y], atM: [plane.x, plane.y] })),
        widthPx,
        heightPx,
        usual: cameraUsual,
        ask: inside,
        seen,
      }),
    )
    .join('\n');
  const run = spawnSync(python ?? '', [resolve('reference', 'scipy', 'camera_marks.py')], {
    input,
    encoding: 'utf8',
    env: { ...process.env, OMP_NUM_THREADS: '1', OPENBLAS_NUM_THREADS: '1' },
  });
  expect(run.status, run.stderr).toBe(0);
  const answers = run.stdout
    .trim()
    .split('\n')
    .map((line) => JSON.parse(line));
  expect(answers).toHaveLength(cases.length);
  for (const [i, { seed, marks }] of cases.entries()) {
    const fit = cameraFit({ marks, widthPx, heightPx });
    const theirs: { cost: number; askPx: [number, number][]; seenM: [number, number][] } = answers[i];
    told(`seed ${seed}, cost`, fit.cost, theirs.cost);
    expect(Math.abs(fit.cost - theirs.cost)).toBeLessThan(1e-4 * (1 + theirs.cost));
    const pixels = inside.map(([x, y], k): [Point, Point] => {
      told(`seed ${seed}, place ${x}, ${y}: u`, cameraProject(fit.camera, { x, y }).x, theirs.askPx[k][0]);
      return [cameraProject(fit.camera, { x, y }), { x: theirs.askPx[k][0], y: theirs.askPx[k][1] }];
    });
    expect(worst(pixels), `seed ${seed}, pixels`).toBeLessThan(1e-4);
    const places = seen.map(([x, y], k): [Point, Point] => [
      cameraBackProject(fit.camera, { x, y }),
      { x: theirs.seenM[k][0], y: theirs.seenM[k][1] },
    ]);
    expect(worst(places), `seed ${seed}, metres`).toBeLessThan(1e-7);
  }
});
