/**
 * The picture straightened along a centreline: row u runs across the blank at place u, column v is the
 * distance off the centreline along the normal.
 */
import { lumaAt, type Pixels } from '../pixels.ts';
import { type Centreline, centrelineNormals } from './centreline.ts';
import { halfKernel } from './smooth.ts';

export interface Strip {
  rows: number;
  columns: number;
  /** Distance of column j off the centreline: (j − middle)·columnPx. */
  columnPx: number;
  middle: number;
  values: Float32Array;
}

export function stripAlong(pixels: Pixels, line: Centreline, reachPx: number, columnPx: number): Strip {
  const normals = centrelineNormals(line);
  const middle = Math.ceil(reachPx / columnPx);
  const columns = 2 * middle + 1;
  const rows = line.x.length;
  const values = new Float32Array(rows * columns);
  for (let u = 0; u < rows; u++) {
    for (let j = 0; j < columns; j++) {
      const off = (j - middle) * columnPx;
      values[u * columns + j] = lumaAt(
        pixels,
        line.x[u] + off * normals.x[u],
        line.y[u] + off * normals.y[u],
      );
    }
  }
  return { rows, columns, columnPx, middle, values };
}

/** Of a row, over the columns from `fromPx` to `toPx` off the centreline. */
export function stripMean(
  { values, columns, columnPx, middle }: Strip,
  row: number,
  fromPx: number,
  toPx: number,
): number {
  const [first, last] = [fromPx, toPx].map((off) => Math.round(off / columnPx) + middle);
  let sum = 0;
  for (let j = first; j <= last; j++) sum += values[row * columns + j];
  return sum / (last - first + 1);
}

/**
 * Slope across the blank in grey steps per pixel: derivative of a Gaussian across, averaged along by another.
 * Widths are standard deviations in rows and in pixels.
 */
export function stripSlope(strip: Strip, acrossPx: number, alongRows: number): Strip {
  const { rows, columns, columnPx } = strip;
  const along = new Float32Array(rows * columns);
  const alongKernel = halfKernel(alongRows);
  for (let u = 0; u < rows; u++) {
    for (let k = 1 - alongKernel.length; k < alongKernel.length; k++) {
      const from = Math.min(rows - 1, Math.max(0, u + k)) * columns;
      const weight = alongKernel[Math.abs(k)];
      for (let j = 0; j < columns; j++) along[u * columns + j] += weight * strip.values[from + j];
    }
  }
  const kernel = halfKernel(acrossPx / columnPx);
  const values = new Float32Array(rows * columns);
  const unit = columnPx * (acrossPx / columnPx) ** 2;
  for (let u = 0; u < rows; u++) {
    for (let j = 0; j < columns; j++) {
      let sum = 0;
      for (let k = 1; k < kernel.length; k++) {
        const right = along[u * columns + Math.min(columns - 1, j + k)];
        const left = along[u * columns + Math.max(0, j - k)];
        sum += k * kernel[k] * (right - left);
      }
      values[u * columns + j] = sum / unit;
    }
  }
  return { ...strip, values };
}
