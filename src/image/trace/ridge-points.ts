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
  const ridges: Ridge[] = [];
  for (let i = 0; i < size; i++) {
    if (best[i] > 0) ridges.push({ pixel: i, ...ridgeAt(smooths[layerOf[i]], i)! });
  }
  const kept = strongest(
    ridges.filter((ridge) => !isBeaten(ridge, best, image)),
    best,
    choice.mostPoints,
  );
  return gathered(kept, image.width, best, layerOf, choice.scales);
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
      const ridge = ridgeAt(smooth, i);
      if (ridge === undefined) continue;
      const strength = Math.abs(ridge.lambda) / noise;
      if (strength > best[i] && Math.abs(ridge.lambda) > floor) {
        best[i] = strength;
        layerOf[i] = index;
      }
    }
  }
}

interface RidgeShape {
  lambda: number;
  normalX: number;
  normalY: number;
  offset: number;
}

interface Ridge extends RidgeShape {
  pixel: number;
}

/** The middle line through a pixel of a smoothed picture, or undefined. */
function ridgeAt(smooth: GreyImage, i: number): RidgeShape | undefined {
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
  if (Math.abs(2 * middle - lambda) > 0.6 * Math.abs(lambda)) return undefined;
  let normalX = xy;
  let normalY = lambda - xx;
  if (Math.abs(lambda - yy) > Math.abs(normalY)) {
    normalX = lambda - yy;
    normalY = xy;
  }
  const norm = Math.sqrt(normalX * normalX + normalY * normalY);
  if (norm < 1e-9) return undefined;
  normalX /= norm;
  normalY /= norm;
  const slopeX = (values[i + 1] - values[i - 1]) / 2;
  const slopeY = (values[i + width] - values[i - width]) / 2;
  const offset = -(slopeX * normalX + slopeY * normalY) / lambda;
  if (Math.abs(offset * normalX) > 0.6 || Math.abs(offset * normalY) > 0.6) return undefined;
  return { lambda, normalX, normalY, offset };
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

/** Whether a stronger ridge lies next to it across the line, as several scales answer one band. */
function isBeaten(ridge: Ridge, best: Float32Array, image: GreyImage): boolean {
  const { width, height } = image;
  const x = ridge.pixel % width;
  const y = (ridge.pixel - x) / width;
  for (const step of [-2, -1, 1, 2]) {
    const px = Math.round(x + ridge.normalX * step);
    const py = Math.round(y + ridge.normalY * step);
    if (px < 0 || py < 0 || px >= width || py >= height) continue;
    const j = py * width + px;
    if (best[j] > best[ridge.pixel] || (best[j] === best[ridge.pixel] && j < ridge.pixel)) return true;
  }
  return false;
}

function strongest(ridges: Ridge[], best: Float32Array, most: number): Ridge[] {
  if (ridges.length <= most) return ridges;
  const values = Float32Array.from(ridges, (ridge) => best[ridge.pixel]).sort();
  const bar = values[values.length - most];
  return ridges.filter((ridge) => best[ridge.pixel] >= bar);
}

function gathered(
  ridges: readonly Ridge[],
  width: number,
  best: Float32Array,
  layerOf: Uint8Array,
  scales: readonly number[],
): RidgePoints {
  const x = (ridge: Ridge): number => (ridge.pixel % width) + ridge.offset * ridge.normalX;
  const y = (ridge: Ridge): number => Math.floor(ridge.pixel / width) + ridge.offset * ridge.normalY;
  return {
    count: ridges.length,
    x: Float32Array.from(ridges, x),
    y: Float32Array.from(ridges, y),
    tangentX: Float32Array.from(ridges, (ridge) => -ridge.normalY),
    tangentY: Float32Array.from(ridges, (ridge) => ridge.normalX),
    strength: Float32Array.from(ridges, (ridge) => best[ridge.pixel]),
    polarity: Int8Array.from(ridges, (ridge) => (ridge.lambda > 0 ? 1 : -1)),
    scale: Float32Array.from(ridges, (ridge) => scales[layerOf[ridge.pixel]]),
  };
}
