/**
 * What stands out from the scanner's ground.
 *
 * The ground is a quadratic in x and y for each channel, fitted to a sample of pixels by least squares with
 * Tukey's biweight, starting from the most frequent value; the difference of a pixel is its largest channel's
 * distance from it.
 * Assumption: more of the glass is empty than covered.
 * Source: P. J. Huber, Robust Statistics, 1981 (iteratively reweighted least squares; from memory).
 */
import { Matrix, solve } from 'ml-matrix';
import type { GreyImage, Pixels } from '../pixels.ts';

export interface Ground {
  /** Coefficients of 1, u, v, u², uv, v² for each of three channels; u, v run from −1 to 1 over the picture. */
  channels: Float64Array[];
  /** Standard deviation of the empty ground's difference, grey steps. */
  noise: number;
  isDark: boolean;
}

export function groundOf(pixels: Pixels): Ground {
  const places = samplePlaces(pixels);
  const fits = [0, 1, 2].map((channel) => channelFit(pixels, places, channel));
  const spread = Math.max(...fits.map((fit) => fit.noise));
  const level = fits.reduce((sum, fit) => sum + fit.coefficients[0], 0) / 3;
  return { channels: fits.map((fit) => fit.coefficients), noise: Math.max(0.5, spread), isDark: level < 110 };
}

/** Difference from the ground, 0..255, averaged over blocks of `factor` × `factor`, of a window of the picture. */
export function differenceIn(
  pixels: Pixels,
  ground: Ground,
  window: { left: number; top: number; width: number; height: number },
  factor: number,
): GreyImage {
  const width = Math.floor(window.width / factor);
  const height = Math.floor(window.height / factor);
  const values = new Float32Array(width * height);
  const { data, channels } = pixels;
  const share = 1 / (factor * factor);
  const used = channels === 1 ? 1 : 3;
  for (let y = 0; y < height; y++) {
    for (let c = 0; c < used; c++) {
      const rowY = window.top + y * factor + (factor - 1) / 2;
      for (let x = 0; x < width; x++) {
        const left = window.left + x * factor;
        let sum = 0;
        for (let dy = 0; dy < factor; dy++) {
          let at = ((window.top + y * factor + dy) * pixels.width + left) * channels + c;
          for (let dx = 0; dx < factor; dx++) {
            sum += data[at];
            at += channels;
          }
        }
        const off = Math.abs(
          sum * share - groundAt(pixels, ground.channels[c], left + (factor - 1) / 2, rowY),
        );
        const i = y * width + x;
        if (off > values[i]) values[i] = off;
      }
    }
  }
  return { width, height, values };
}

function groundAt(pixels: Pixels, k: Float64Array, x: number, y: number): number {
  const u = (2 * x) / pixels.width - 1;
  const v = (2 * y) / pixels.height - 1;
  return k[0] + u * (k[1] + k[3] * u + k[4] * v) + v * (k[2] + k[5] * v);
}

interface Places {
  u: number[];
  v: number[];
  at: number[];
}

/** About 4000 pixels on a skewed grid. */
function samplePlaces(pixels: Pixels): Places {
  const places: Places = { u: [], v: [], at: [] };
  const step = Math.max(1, Math.floor(Math.sqrt((pixels.width * pixels.height) / 4000)));
  for (let y = step >> 1; y < pixels.height; y += step) {
    for (let x = ((y * 7) % step) + 0; x < pixels.width; x += step) {
      places.u.push((2 * x) / pixels.width - 1);
      places.v.push((2 * y) / pixels.height - 1);
      places.at.push((y * pixels.width + x) * pixels.channels);
    }
  }
  return places;
}

function channelFit(
  pixels: Pixels,
  places: Places,
  channel: number,
): { coefficients: Float64Array; noise: number } {
  const offset = pixels.channels === 1 ? 0 : channel;
  const values = places.at.map((at) => pixels.data[at + offset]);
  let coefficients = Float64Array.from([mostFrequent(values), 0, 0, 0, 0, 0]);
  let noise = 12;
  for (let round = 0; round < 6; round++) {
    const normal = Matrix.zeros(6, 6);
    const right = Matrix.zeros(6, 1);
    const off: number[] = [];
    for (let i = 0; i < values.length; i++) {
      const row = terms(places.u[i], places.v[i]);
      const miss = values[i] - row.reduce((sum, term, k) => sum + term * coefficients[k], 0);
      const ratio = miss / (5 * noise);
      if (Math.abs(ratio) >= 1) continue;
      off.push(Math.abs(miss));
      const weight = (1 - ratio * ratio) ** 2;
      for (let a = 0; a < 6; a++) {
        right.set(a, 0, right.get(a, 0) + weight * row[a] * values[i]);
        for (let b = 0; b < 6; b++) normal.set(a, b, normal.get(a, b) + weight * row[a] * row[b]);
      }
    }
    if (off.length < 50) break;
    for (let a = 0; a < 6; a++) normal.set(a, a, normal.get(a, a) + 1e-6 * off.length);
    coefficients = Float64Array.from(solve(normal, right).to1DArray());
    noise = Math.max(0.5, 1.4826 * off.sort((a, b) => a - b)[off.length >> 1]);
  }
  return { coefficients, noise };
}

function terms(u: number, v: number): number[] {
  return [1, u, v, u * u, u * v, v * v];
}

function mostFrequent(values: readonly number[]): number {
  const counts = new Float64Array(256);
  for (const value of values) {
    for (let near = Math.max(0, value - 3); near <= Math.min(255, value + 3); near++) counts[near]++;
  }
  return counts.indexOf(Math.max(...counts));
}
