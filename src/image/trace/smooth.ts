import type { GreyImage } from '../pixels.ts';

/** Separable Gaussian of standard deviation `sigma` pixels; the border's value repeats beyond it. */
export function gaussianSmooth(image: GreyImage, sigma: number): GreyImage {
  const { width, height, values } = image;
  const kernel = halfKernel(sigma);
  const reach = kernel.length - 1;
  const rows = new Float32Array(width * height);
  const padded = new Float32Array(width + 2 * reach);
  for (let y = 0; y < height; y++) {
    padded.fill(values[y * width], 0, reach);
    padded.set(values.subarray(y * width, (y + 1) * width), reach);
    padded.fill(values[(y + 1) * width - 1], reach + width);
    const to = y * width;
    for (let x = 0; x < width; x++) {
      const at = x + reach;
      let sum = kernel[0] * padded[at];
      for (let k = 1; k <= reach; k++) sum += kernel[k] * (padded[at - k] + padded[at + k]);
      rows[to + x] = sum;
    }
  }
  const out = new Float32Array(width * height);
  for (let y = 0; y < height; y++) {
    const to = y * width;
    for (let x = 0; x < width; x++) out[to + x] = kernel[0] * rows[to + x];
    for (let k = 1; k <= reach; k++) {
      const above = Math.max(0, y - k) * width;
      const below = Math.min(height - 1, y + k) * width;
      const weight = kernel[k];
      for (let x = 0; x < width; x++) out[to + x] += weight * (rows[above + x] + rows[below + x]);
    }
  }
  return { width, height, values: out };
}

/** Weights of the middle and of each step outwards, summing to one over both sides. */
export function halfKernel(sigma: number): Float32Array {
  const reach = Math.max(1, Math.ceil(3 * sigma));
  const kernel = Float32Array.from({ length: reach + 1 }, (_, k) => Math.exp((-k * k) / (2 * sigma * sigma)));
  let sum = kernel[0];
  for (let k = 1; k <= reach; k++) sum += 2 * kernel[k];
  return kernel.map((weight) => weight / sum);
}
