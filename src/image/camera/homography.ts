/**
 * Plane-to-picture homography by the normalised direct linear transform.
 *
 * p ~ H·P with P = (X, Y, 1) in the plane and p = (x, y, 1) in the picture. Two rows per point,
 * A·h = 0, |h| = 1, solved by the smallest singular vector after both point sets are moved to their centroid
 * and scaled to a mean distance of √2.
 * Assumptions: straight lines stay straight (no lens distortion), four or more points, no three of four on a
 * line. Source: R. Hartley, "In defense of the eight-point algorithm", IEEE Trans. PAMI 19 (1997) 580-593
 * (normalisation); R. Hartley and A. Zisserman, Multiple View Geometry, 2nd ed. 2003, algorithm 4.2
 * (from memory).
 */
import { Matrix, SingularValueDecomposition } from 'ml-matrix';

export interface Point {
  x: number;
  y: number;
}

export interface PointPair {
  plane: Point;
  picture: Point;
}

/** Row-major 3 × 3 matrix, plane (any unit) to picture (any unit), scaled so that its last entry is 1. */
export type Homography = Float64Array;

interface HomographyFit {
  homography: Homography;
  /**
   * Second smallest over largest singular value of the design matrix: near 0 the points do not fix the map
   * (for instance three of four marks on a line).
   */
  soundness: number;
}

/** Fits the homography. Throws when fewer than four pairs are given (an invariant of the caller). */
export function homographyFit(pairs: readonly PointPair[]): HomographyFit {
  if (pairs.length < 4) throw new Error(`a homography needs four point pairs, got ${pairs.length}`);
  const fromPlane = normalisation(pairs.map((pair) => pair.plane));
  const fromPicture = normalisation(pairs.map((pair) => pair.picture));
  const design = new Matrix(Math.max(9, 2 * pairs.length), 9);
  for (const [i, pair] of pairs.entries()) {
    const P = normalised(fromPlane, pair.plane);
    const p = normalised(fromPicture, pair.picture);
    design.setRow(2 * i, [P.x, P.y, 1, 0, 0, 0, -p.x * P.x, -p.x * P.y, -p.x]);
    design.setRow(2 * i + 1, [0, 0, 0, P.x, P.y, 1, -p.y * P.x, -p.y * P.y, -p.y]);
  }
  const svd = new SingularValueDecomposition(design, { autoTranspose: true });
  const h = Float64Array.from(svd.rightSingularVectors.getColumn(8));
  const unscaled = multiply(
    multiply([1 / fromPicture.scale, 0, fromPicture.x, 0, 1 / fromPicture.scale, fromPicture.y, 0, 0, 1], h),
    [
      fromPlane.scale,
      0,
      -fromPlane.scale * fromPlane.x,
      0,
      fromPlane.scale,
      -fromPlane.scale * fromPlane.y,
      0,
      0,
      1,
    ],
  );
  return {
    homography: unscaled.map((value) => value / unscaled[8]),
    soundness: svd.diagonal[7] / svd.diagonal[0],
  };
}

/** Maps a point; the result is not finite for a point on the vanishing line. */
export function homographyApply(h: ArrayLike<number>, point: Point): Point {
  const w = h[6] * point.x + h[7] * point.y + h[8];
  return {
    x: (h[0] * point.x + h[1] * point.y + h[2]) / w,
    y: (h[3] * point.x + h[4] * point.y + h[5]) / w,
  };
}

interface Normalisation {
  x: number;
  y: number;
  scale: number;
}

function normalisation(points: readonly Point[]): Normalisation {
  const x = points.reduce((sum, point) => sum + point.x, 0) / points.length;
  const y = points.reduce((sum, point) => sum + point.y, 0) / points.length;
  const mean = points.reduce((sum, point) => sum + Math.hypot(point.x - x, point.y - y), 0) / points.length;
  return { x, y, scale: mean > 0 ? Math.SQRT2 / mean : 1 };
}

function normalised(by: Normalisation, point: Point): Point {
  return { x: (point.x - by.x) * by.scale, y: (point.y - by.y) * by.scale };
}

function multiply(a: ArrayLike<number>, b: ArrayLike<number>): Float64Array {
  const product = new Float64Array(9);
  for (let row = 0; row < 3; row++) {
    for (let column = 0; column < 3; column++) {
      let sum = 0;
      for (let k = 0; k < 3; k++) sum += a[3 * row + k] * b[3 * k + column];
      product[3 * row + column] = sum;
    }
  }
  return product;
}
