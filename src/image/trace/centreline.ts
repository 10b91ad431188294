/**
 * A curve in the picture as places at equal steps of arc length, and its smoothing.
 *
 * Smoothing minimises Σ w(z − y)² + λ Σ (Δ³z)², which leaves parabolas as they are; λ = (ℓ/2π)^6 in steps
 * halves waves of length ℓ.
 * Source: E. T. Whittaker, "On a new method of graduation", Proc. Edinburgh Math. Soc. 41 (1922) 63-75;
 * P. H. C. Eilers, "A perfect smoother", Analytical Chemistry 75 (2003) 3631-3636.
 */
import type { Point } from '../camera/homography.ts';

export interface Centreline {
  stepPx: number;
  x: Float64Array;
  y: Float64Array;
}

/** Resamples a polyline at equal steps; the last step is stretched or shrunk by less than half to fit. */
export function centrelineOf(path: readonly Point[], stepPx: number): Centreline {
  const along = new Float64Array(path.length);
  for (let i = 1; i < path.length; i++) {
    along[i] = along[i - 1] + Math.hypot(path[i].x - path[i - 1].x, path[i].y - path[i - 1].y);
  }
  const total = along[path.length - 1];
  const count = Math.max(4, Math.round(total / stepPx));
  const x = new Float64Array(count + 1);
  const y = new Float64Array(count + 1);
  let k = 0;
  for (let i = 0; i <= count; i++) {
    const at = (total * i) / count;
    while (k < path.length - 2 && along[k + 1] < at) k++;
    const share = (at - along[k]) / (along[k + 1] - along[k] || 1);
    x[i] = path[k].x + (path[k + 1].x - path[k].x) * share;
    y[i] = path[k].y + (path[k + 1].y - path[k].y) * share;
  }
  return { stepPx: total / count, x, y };
}

/** Unit normals, to the right of travel with y down: (−ty, tx). Tangents are taken over two steps each way. */
export function centrelineNormals(line: Centreline): { x: Float64Array; y: Float64Array } {
  const count = line.x.length;
  const x = new Float64Array(count);
  const y = new Float64Array(count);
  for (let i = 0; i < count; i++) {
    const a = Math.max(0, i - 2);
    const b = Math.min(count - 1, i + 2);
    const tx = line.x[b] - line.x[a];
    const ty = line.y[b] - line.y[a];
    const norm = Math.hypot(tx, ty) || 1;
    x[i] = -ty / norm;
    y[i] = tx / norm;
  }
  return { x, y };
}

/** Whittaker's smoother of third differences; `wave` in steps. Weights may be zero over long stretches. */
export function whittaker(values: ArrayLike<number>, weights: ArrayLike<number>, wave: number): Float64Array {
  const n = values.length;
  const lambda = (wave / (2 * Math.PI)) ** 6;
  // Bands of W + λ·DᵀD, D the third difference: bands[d][i] = entry (i, i + d).
  const bands = [0, 1, 2, 3].map(() => new Float64Array(n));
  const pattern = [-1, 3, -3, 1];
  for (let row = 0; row + 3 < n; row++) {
    for (let a = 0; a < 4; a++) {
      for (let b = a; b < 4; b++) bands[b - a][row + a] += lambda * pattern[a] * pattern[b];
    }
  }
  const right = new Float64Array(n);
  for (let i = 0; i < n; i++) {
    bands[0][i] += weights[i] + 1e-9;
    right[i] = (weights[i] + 1e-9) * values[i];
  }
  return solveBanded(bands, right);
}

/** Cholesky-like LDLᵀ for a symmetric positive definite matrix of half bandwidth 3. */
function solveBanded(bands: readonly Float64Array[], right: Float64Array): Float64Array {
  const n = right.length;
  const width = bands.length - 1;
  const d = new Float64Array(n);
  const l = Array.from({ length: width + 1 }, () => new Float64Array(n));
  for (let i = 0; i < n; i++) {
    for (let k = Math.min(width, i); k >= 1; k--) {
      // l[k][i] multiplies unknown i − k in row i.
      let sum = bands[k][i - k];
      for (let m = k + 1; m <= Math.min(width, i); m++) sum -= l[m][i] * l[m - k][i - k] * d[i - m];
      l[k][i] = sum / d[i - k];
    }
    let sum = bands[0][i];
    for (let m = 1; m <= Math.min(width, i); m++) sum -= l[m][i] * l[m][i] * d[i - m];
    d[i] = sum;
  }
  const z = Float64Array.from(right);
  for (let i = 0; i < n; i++) for (let m = 1; m <= Math.min(width, i); m++) z[i] -= l[m][i] * z[i - m];
  for (let i = 0; i < n; i++) z[i] /= d[i];
  for (let i = n - 1; i >= 0; i--) {
    for (let m = 1; m <= Math.min(width, n - 1 - i); m++) z[i] -= l[m][i + m] * z[i + m];
  }
  return z;
}

/** Moves each place by `shift` along its normal and resamples at the same step. */
export function centrelineShifted(line: Centreline, shift: ArrayLike<number>): Centreline {
  const normals = centrelineNormals(line);
  const moved: Point[] = [];
  for (let i = 0; i < line.x.length; i++) {
    moved.push({ x: line.x[i] + shift[i] * normals.x[i], y: line.y[i] + shift[i] * normals.y[i] });
  }
  return centrelineOf(moved, line.stepPx);
}

/** Smooths both coordinates with equal weights. */
export function centrelineSmoothed(line: Centreline, wavePx: number): Centreline {
  const ones = new Float64Array(line.x.length).fill(1);
  const wave = wavePx / line.stepPx;
  const x = whittaker(line.x, ones, wave);
  const y = whittaker(line.y, ones, wave);
  return centrelineOf(
    Array.from(x, (value, i) => ({ x: value, y: y[i] })),
    line.stepPx,
  );
}
