import type { GreyImage } from '../pixels.ts';

/** Separable Gaussian of standard deviation `sigma` pixels; the border's value repeats beyond it. */
export function gaussianSmooth(image: GreyImage, sigma: number): GreyImage {
  const { width, height, values } = image;
  const kernel = Float64Array.from(halfKernel(sigma));
  const reach = kernel.length - 1;
  const slots = 2 * reach + 1;
  // Rows smoothed along themselves, as many as one row of the answer needs: they stay in the processor's cache.
  const rows = Array.from({ length: slots }, () => new Float64Array(width));
  const padded = new Float64Array(width + 2 * reach);
  const sum = new Float64Array(width);
  const out = new Float32Array(width * height);
  let ready = 0;
  for (let y = 0; y < height; y++) {
    for (; ready < height && ready <= y + reach; ready++) {
      padded.fill(values[ready * width], 0, reach);
      padded.set(values.subarray(ready * width, (ready + 1) * width), reach);
      padded.fill(values[(ready + 1) * width - 1], reach + width);
      smoothRow(padded, kernel, rows[ready % slots]);
    }
    const row = (k: number) => rows[Math.min(height - 1, Math.max(0, y + k)) % slots];
    smoothAcross(row, kernel, sum);
    out.set(sum, y * width);
  }
  return { width, height, values: out };
}

/** One row along itself; two distances at a time, which halves the traffic of the sums. */
function smoothRow(padded: Float64Array, kernel: Float64Array, out: Float64Array): void {
  const reach = kernel.length - 1;
  for (let x = 0; x < out.length; x++) out[x] = kernel[0] * padded[x + reach];
  for (let k = 1; k <= reach; k += 2) {
    const [near, far] = [kernel[k], k < reach ? kernel[k + 1] : 0];
    const other = Math.min(reach, k + 1);
    for (let x = 0; x < out.length; x++) {
      const at = x + reach;
      out[x] += near * (padded[at - k] + padded[at + k]) + far * (padded[at - other] + padded[at + other]);
    }
  }
}

function smoothAcross(row: (k: number) => Float64Array, kernel: Float64Array, out: Float64Array): void {
  const reach = kernel.length - 1;
  const middle = row(0);
  for (let x = 0; x < out.length; x++) out[x] = kernel[0] * middle[x];
  for (let k = 1; k <= reach; k += 2) {
    const [near, far] = [kernel[k], k < reach ? kernel[k + 1] : 0];
    const other = Math.min(reach, k + 1);
    const [above, below, above2, below2] = [row(-k), row(k), row(-other), row(other)];
    for (let x = 0; x < out.length; x++) {
      out[x] += near * (above[x] + below[x]) + far * (above2[x] + below2[x]);
    }
  }
}

/** Weights of the middle and of each step outwards, summing to one over both sides. */
export function halfKernel(sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(3 * sigma));
  const kernel = Float32Array.from({ length: reach + 1 }, (_, k) => Math.exp((-k * k) / (2 * sigma * sigma)));
  let sum = kernel[0];
  for (let k = 1; k <= reach; k++) sum += 2 * kernel[k];
  return kernel.map((weight) => weight / sum);
}
