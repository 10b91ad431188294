/**
 * Points on the middle lines of bright or dark bands, at several widths.
 *
 * At each scale σ the picture is smoothed by a Gaussian and expanded to second order; with n the direction of
 * the larger second derivative λ, the middle line is where the first derivative along n vanishes:
 * offset = −(∇I·n)/λ, kept when it falls inside the pixel. Strength is σ²·|λ|, in units of its noise.
 * Assumptions: bands of half-width up to √3·σ of the largest scale, locally straight.
 * Source: C. Steger, "An unbiased detector of curvilinear structures", IEEE Trans. PAMI 20 (1998) 113-125.
 */
import type { GreyImage } from '../pixels.ts';
import { gaussianSmooth } from './smooth.ts';

/** Points in structure-of-arrays form; all lengths in pixels of the image given. */
export interface RidgePoints {
  count: number;
  x: Float32Array;
  y: Float32Array;
  /** Unit tangent; its sign has no meaning. */
  tangentX: Float32Array;
  tangentY: Float32Array;
  /** Scale-normalised second derivative over its noise, unsigned. */
  strength: Float32Array;
  /** +1 dark band on light, −1 light band on dark. */
  polarity: Int8Array;
  /** The scale that answers best; grows with the band's width. */
  scale: Float32Array;
}

export interface RidgeChoice {
  scales: readonly number[];
  /** Smallest strength kept, in units of the noise at that scale. */
  leastStrength: number;
  /** At most this many points, strongest first. */
  mostPoints: number;
}

export function ridgePoints(image: GreyImage, choice: RidgeChoice): RidgePoints {
  const size = image.width * image.height;
  const best = new Float32Array(size);
  const layerOf = new Uint8Array(size);
  const smooths: GreyImage[] = [];
  for (const [index, sigma] of choice.scales.entries()) {
    const smooth = gaussianSmooth(image, sigma);
    smooths.push(smooth);
    markRidges(smooth, sigma, choice.leastStrength, index, best, layerOf);
  }
  const kept = strongest(unbeaten(smooths, best, layerOf), best, choice.mostPoints);
  return gathered(kept, smooths, best, layerOf, choice.scales);
}

/** Pixels with a middle line that no stronger one lies beside. */
function unbeaten(smooths: readonly GreyImage[], best: Float32Array, layerOf: Uint8Array): Int32Array {
  const kept = new Int32Array(best.reduce((count, strength) => count + (strength > 0 ? 1 : 0), 0));
  let count = 0;
  for (let i = 0; i < best.length; i++) {
    if (best[i] <= 0 || !ridgeAt(smooths[layerOf[i]], i)) continue;
    if (!isBeaten(i, best, smooths[0])) kept[count++] = i;
  }
  return kept.subarray(0, count);
}

/** Notes in `best` and `layerOf` each pixel that a middle line of this scale runs through. */
function markRidges(
  smooth: GreyImage,
  sigma: number,
  leastStrength: number,
  index: number,
  best: Float32Array,
  layerOf: Uint8Array,
): void {
  const { width, height, values } = smooth;
  const noise = curvatureNoise(smooth);
  const least = leastStrength * noise;
  // Large scales answer weakly to grain; a common floor of a quarter grey step keeps plain walls quiet.
  const floor = Math.max(least, 0.25 / (sigma * sigma));
  for (let y = 2; y < height - 2; y++) {
    for (let i = y * width + 2; i < y * width + width - 2; i++) {
      const twice = 2 * values[i];
      const xx = values[i - 1] - twice + values[i + 1];
      const yy = values[i - width] - twice + values[i + width];
      // |λ| ≥ floor needs |xx| + |yy| large, or a large mixed derivative, which rotates into neighbours.
      if (Math.abs(xx) + Math.abs(yy) < floor) continue;
      if (!ridgeAt(smooth, i)) continue;
      const strength = Math.abs(ridge.lambda) / noise;
      if (strength > best[i] && Math.abs(ridge.lambda) > floor) {
        best[i] = strength;
        layerOf[i] = index;
      }
    }
  }
}

/** The middle line that was looked at last: one object for all pixels, or collecting them would cost as much. */
const ridge = { lambda: 0, normalX: 0, normalY: 0, offset: 0 };

/** Whether a middle line of a smoothed picture runs through a pixel; `ridge` then tells of it. */
function ridgeAt(smooth: GreyImage, i: number): boolean {
  const { width, values } = smooth;
  const centre = values[i];
  const xx = values[i - 1] - 2 * centre + values[i + 1];
  const yy = values[i - width] - 2 * centre + values[i + width];
  const xy =
    (values[i - width - 1] - values[i - width + 1] - values[i + width - 1] + values[i + width + 1]) / 4;
  const middle = (xx + yy) / 2;
  const half = (xx - yy) / 2;
  const spread = Math.sqrt(half * half + xy * xy);
  const lambda = middle >= 0 ? middle + spread : middle - spread;
  // Blobs and corners bend as much along as across.
  if (Math.abs(2 * middle - lambda) > 0.6 * Math.abs(lambda)) return false;
  let normalX = xy;
  let normalY = lambda - xx;
  if (Math.abs(lambda - yy) > Math.abs(normalY)) {
    normalX = lambda - yy;
    normalY = xy;
  }
  const norm = Math.sqrt(normalX * normalX + normalY * normalY);
  if (norm < 1e-9) return false;
  normalX /= norm;
  normalY /= norm;
  const slopeX = (values[i + 1] - values[i - 1]) / 2;
  const slopeY = (values[i + width] - values[i - width]) / 2;
  const offset = -(slopeX * normalX + slopeY * normalY) / lambda;
  if (Math.abs(offset * normalX) > 0.6 || Math.abs(offset * normalY) > 0.6) return false;
  ridge.lambda = lambda;
  ridge.normalX = normalX;
  ridge.normalY = normalY;
  ridge.offset = offset;
  return true;
}

/** Most of a picture is plain, so the median second derivative measures grain and texture. */
function curvatureNoise(smooth: GreyImage): number {
  const { width, height, values } = smooth;
  const sample: number[] = [];
  for (let i = 2 * width + 2; i < (height - 2) * width - 2; i += 211) {
    const xx = values[i - 1] - 2 * values[i] + values[i + 1];
    const yy = values[i - width] - 2 * values[i] + values[i + width];
    sample.push(Math.max(Math.abs(xx), Math.abs(yy)));
  }
  sample.sort((a, b) => a - b);
  return Math.max(1e-3, sample[Math.floor(sample.length / 2)] ?? 0);
}

/** Whether a stronger ridge lies next to `ridge` across the line, as several scales answer one band. */
function isBeaten(pixel: number, best: Float32Array, { width, height }: GreyImage): boolean {
  const x = pixel % width;
  const y = (pixel - x) / width;
  for (let step = -2; step <= 2; step++) {
    if (step === 0) continue;
    const px = Math.round(x + ridge.normalX * step);
    const py = Math.round(y + ridge.normalY * step);
    if (px < 0 || py < 0 || px >= width || py >= height) continue;
    const j = py * width + px;
    if (best[j] > best[pixel] || (best[j] === best[pixel] && j < pixel)) return true;
  }
  return false;
}

function strongest(pixels: Int32Array, best: Float32Array, most: number): Int32Array {
  if (pixels.length <= most) return pixels;
  const values = Float32Array.from(pixels, (pixel) => best[pixel]).sort();
  const bar = values[values.length - most];
  return pixels.filter((pixel) => best[pixel] >= bar);
}

function gathered(
  pixels: Int32Array,
  smooths: readonly GreyImage[],
  best: Float32Array,
  layerOf: Uint8Array,
  scales: readonly number[],
): RidgePoints {
  const count = pixels.length;
  const floats = () => new Float32Array(count);
  const [x, y, tangentX, tangentY] = [floats(), floats(), floats(), floats()];
  const [strength, scale, polarity] = [floats(), floats(), new Int8Array(count)];
  const { width } = smooths[0];
  for (let k = 0; k < count; k++) {
    const pixel = pixels[k];
    ridgeAt(smooths[layerOf[pixel]], pixel);
    x[k] = (pixel % width) + ridge.offset * ridge.normalX;
    y[k] = Math.floor(pixel / width) + ridge.offset * ridge.normalY;
    tangentX[k] = -ridge.normalY;
    tangentY[k] = ridge.normalX;
    strength[k] = best[pixel];
    polarity[k] = ridge.lambda > 0 ? 1 : -1;
    scale[k] = scales[layerOf[pixel]];
  }
  return { count, x, y, tangentX, tangentY, strength, polarity, scale };
}
