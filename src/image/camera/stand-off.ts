/**
 * Marks that do not stand in the blank's plane.
 *
 * A plane parallel to the marks', nearer to the camera by s, is seen by the same camera with its origin moved
 * along the marks' normal: q = (R·(X, Y, 0) + t + s·n)/depth with n = ±r₃ pointing to the camera. Left out, every
 * length in the blank's plane is read too large by s/(D − s), D being the camera's distance from the marks.
 * Source: elementary projective geometry. Assumption: the two planes are parallel.
 */
import type { Camera } from './camera-model.ts';

/** The camera over the plane `nearerM` nearer to it than the marks (negative: farther). */
export function cameraOverPlane(camera: Camera, nearerM: number): Camera {
  if (nearerM === 0) return camera;
  const normal = towardsCamera(camera);
  const plane = camera.plane.slice();
  for (let row = 0; row < 3; row++) plane[3 * row + 2] += nearerM * normal[row];
  return { ...camera, plane };
}

/** How far the camera stands from the plane, square to it, in metres. */
export function cameraAwayM({ plane: m }: Camera): number {
  const [x, y, z] = normalOf(m);
  return Math.abs(x * m[2] + y * m[5] + z * m[8]) / lengthUnit(m);
}

/** In the plane's own unit: `plane` may be scaled as a whole, which no picture tells apart. */
function towardsCamera({ plane: m }: Camera): [number, number, number] {
  const [x, y, z] = normalOf(m);
  const unit = lengthUnit(m);
  // The camera is the origin; from the plane's point t it lies towards −t.
  const sign = x * m[2] + y * m[5] + z * m[8] > 0 ? -unit : unit;
  return [sign * x, sign * y, sign * z];
}

/** Length of the two axes' columns, which is what one metre measures. */
function lengthUnit(m: Float64Array): number {
  return Math.sqrt(Math.hypot(m[0], m[3], m[6]) * Math.hypot(m[1], m[4], m[7]));
}

function normalOf(m: Float64Array): [number, number, number] {
  const cross = [m[3] * m[7] - m[6] * m[4], m[6] * m[1] - m[0] * m[7], m[0] * m[4] - m[3] * m[1]];
  const size = Math.hypot(...cross);
  return [cross[0] / size, cross[1] / size, cross[2] / size];
}
