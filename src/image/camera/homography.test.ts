import { beforeAll, describe, expect, test } from 'vitest';
import { randomFrom } from '../../../test/render/random.ts';
import { type OpenCv, openCvReady } from '../../../test/support/open-cv.ts';
import { cameraBackProject, cameraProject } from './camera-model.ts';
import { homographyApply, homographyFit, type PointPair } from './homography.ts';

// OpenCV is the outside reference; it is a development dependency only.
let cv: OpenCv;

beforeAll(async () => {
  cv = (await openCvReady()).cv;
});

function pairs(seed: number, count: number, noisePx: number): PointPair[] {
  const random = randomFrom(seed);
  const h = [900, -60, 400, 50, -880, 2500, 0.02, -0.04, 1];
  return Array.from({ length: count }, () => {
    const plane = { x: random.between(0, 3), y: random.between(0, 2) };
    const at = homographyApply(h, plane);
    return { plane, picture: { x: at.x + noisePx * random.normal(), y: at.y + noisePx * random.normal() } };
  });
}

describe('homography', () => {
  test('agrees with OpenCV on exact and on noisy points', () => {
    for (const [seed, count, noise] of [
      [1, 4, 0],
      [2, 6, 0],
      [3, 4, 1],
    ]) {
      const given = pairs(seed, count, noise);
      const ours = homographyFit(given).homography;
      const flat = (side: 'plane' | 'picture'): number[] =>
        given.flatMap((pair) => [pair[side].x, pair[side].y]);
      const from = cv.matFromArray(count, 1, cv.CV_64FC2, flat('plane'));
      const to = cv.matFromArray(count, 1, cv.CV_64FC2, flat('picture'));
      const theirs = cv.findHomography(from, to, 0);
      for (const at of [
        { x: 0.3, y: 0.4 },
        { x: 2.7, y: 1.6 },
      ]) {
        // OpenCV takes points in single precision: 2500 px are known to 1e-4 px, and three points amplify it.
        const a = homographyApply(ours, at);
        const b = homographyApply(theirs.data64F, at);
        expect(Math.hypot(a.x - b.x, a.y - b.y)).toBeLessThan(0.02);
      }
    }
  });

  test('soundness is small when three of four points lie on a line', () => {
    const onLine = [
      [0, 0, 100, 900],
      [1, 0, 1100, 900],
      [2, 0, 2100, 900],
      [1, 1, 1100, 100],
    ].map(([x, y, u, v]) => ({ plane: { x, y }, picture: { x: u, y: v } }));
    expect(homographyFit(onLine).soundness).toBeLessThan(1e-9);
    expect(homographyFit(pairs(2, 6, 0)).soundness).toBeGreaterThan(1e-3);
  });
});

describe('lens', () => {
  const camera = {
    focalPx: 3000,
    centrePx: { x: 1999.5, y: 1499.5 },
    k1: -0.07,
    k2: 0.012,
    plane: Float64Array.from([1, 0, 0, 0, 1, 0, 0, 0, 1]),
  };
  const matrix = [3000, 0, 1999.5, 0, 3000, 1499.5, 0, 0, 1];

  test('distorts as OpenCV does, and undoes what OpenCV did', () => {
    const ideal = [-0.6, -0.4, 0.5, 0.45, 0.1, -0.3];
    const object = cv.matFromArray(3, 1, cv.CV_64FC3, [-0.6, -0.4, 1, 0.5, 0.45, 1, 0.1, -0.3, 1]);
    const zero = cv.Mat.zeros(3, 1, cv.CV_64F);
    const to = new cv.Mat();
    const K = cv.matFromArray(3, 3, cv.CV_64F, matrix);
    const distortion = cv.matFromArray(1, 4, cv.CV_64F, [camera.k1, camera.k2, 0, 0]);
    cv.projectPoints(object, zero, zero, K, distortion, to);
    for (let i = 0; i < 3; i++) {
      const ours = cameraProject(camera, { x: ideal[2 * i], y: ideal[2 * i + 1] });
      expect(ours.x).toBeCloseTo(to.data64F[2 * i], 6);
      expect(ours.y).toBeCloseTo(to.data64F[2 * i + 1], 6);
      const back = cameraBackProject(camera, { x: to.data64F[2 * i], y: to.data64F[2 * i + 1] });
      expect(back.x).toBeCloseTo(ideal[2 * i], 8);
      expect(back.y).toBeCloseTo(ideal[2 * i + 1], 8);
    }
  });
});
