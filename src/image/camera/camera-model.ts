/**
 * A telephone's camera looking at the blank's plane.
 *
 * q = (R·(X, Y, 0) + t) / depth;  q_d = q(1 + k1·r² + k2·r⁴), r = |q|;  pixel = centre + focal·q_d.
 * Assumptions: square pixels, distortion about the principal point, no tangential part. Pixel centres are at
 * whole numbers, x right, y down.
 * Source: D. C. Brown, "Close-range camera calibration", Photogrammetric Engineering 37 (1971) 855-866; the
 * same k1, k2 as in OpenCV's camera model (from memory).
 */
import type { Point } from './homography.ts';

/** All that fixes the picture of the plane. */
export interface Camera {
  focalPx: number;
  centrePx: Point;
  k1: number;
  k2: number;
  /** Plane to ideal picture coordinates q, row-major: first two columns of R, and t. */
  plane: Float64Array;
}

/** Where a point of the plane (metres) is seen (pixels). */
export function cameraProject(camera: Camera, at: Point): Point {
  const m = camera.plane;
  const depth = m[6] * at.x + m[7] * at.y + m[8];
  const x = (m[0] * at.x + m[1] * at.y + m[2]) / depth;
  const y = (m[3] * at.x + m[4] * at.y + m[5]) / depth;
  const r2 = x * x + y * y;
  const stretch = camera.focalPx * (1 + r2 * (camera.k1 + r2 * camera.k2));
  return { x: camera.centrePx.x + stretch * x, y: camera.centrePx.y + stretch * y };
}

/** Which point of the plane (metres) is seen at a pixel. Not finite for a pixel on the plane's horizon. */
export function cameraBackProject(camera: Camera, pixel: Point): Point {
  const ideal = undistort(camera, {
    x: (pixel.x - camera.centrePx.x) / camera.focalPx,
    y: (pixel.y - camera.centrePx.y) / camera.focalPx,
  });
  // Solve (row0 - x·row2, row1 - y·row2)·(X, Y, 1) = 0.
  const m = camera.plane;
  const a = m[0] - ideal.x * m[6];
  const b = m[1] - ideal.x * m[7];
  const c = m[2] - ideal.x * m[8];
  const d = m[3] - ideal.y * m[6];
  const e = m[4] - ideal.y * m[7];
  const f = m[5] - ideal.y * m[8];
  const determinant = a * e - b * d;
  return { x: (b * f - c * e) / determinant, y: (c * d - a * f) / determinant };
}

/** Removes the lens by Newton's method on the radius, exact to 1e-13 where the lens model is monotone. */
function undistort(lens: { k1: number; k2: number }, seen: Point): Point {
  const seenRadius = Math.hypot(seen.x, seen.y);
  if (seenRadius === 0) return seen;
  let radius = seenRadius;
  for (let i = 0; i < 25; i++) {
    const r2 = radius * radius;
    const off = radius * (1 + r2 * (lens.k1 + r2 * lens.k2)) - seenRadius;
    if (Math.abs(off) < 1e-14) break;
    const slope = 1 + r2 * (3 * lens.k1 + 5 * r2 * lens.k2);
    radius -= off / Math.max(0.25, slope);
  }
  return { x: (seen.x * radius) / seenRadius, y: (seen.y * radius) / seenRadius };
}

/**
 * The same camera for a plane moved towards it by `byM` (metres, parallel), with the same X and Y; and the
 * camera's distance from that plane. The plane's two columns are of one length, since pixels are square.
 */
export function cameraTowards(camera: Camera, byM: number): { camera: Camera; distanceM: number } {
  const m = camera.plane;
  const perM = Math.sqrt(Math.hypot(m[0], m[3], m[6]) * Math.hypot(m[1], m[4], m[7]));
  const normal = [m[3] * m[7] - m[6] * m[4], m[6] * m[1] - m[0] * m[7], m[0] * m[4] - m[3] * m[1]].map(
    (value) => value / (perM * perM),
  );
  const along = normal[0] * m[2] + normal[1] * m[5] + normal[2] * m[8];
  // Towards the camera is against the way from it to the plane.
  const step = (-Math.sign(along) * byM * perM) / Math.hypot(...normal);
  const plane = Float64Array.from(m);
  for (let row = 0; row < 3; row++) plane[3 * row + 2] += step * normal[row];
  return { camera: { ...camera, plane }, distanceM: Math.abs(along) / perM - byM };
}
