/**
 * Places where two straight edges cross and light and dark alternate in four quarters, as in a bow's middle.
 *
 * Response on a circle of 16 samples I₀..I₁₅ of radius 5 px round a pixel:
 *   Σ|(Iₙ + Iₙ₊₈) − (Iₙ₊₄ + Iₙ₊₁₂)|, n < 4   less   Σ|Iₙ − Iₙ₊₈|, n < 8   less   16·|mean of circle − mean within|.
 * The first part answers quarters, the second takes off plain edges, the third takes off stripes.
 * Source: S. Bennett and J. Lasenby, "ChESS - quick and robust detection of chess-board features", Computer
 * Vision and Image Understanding 118 (2014) 197-210 (from memory).
 */
import type { GreyImage } from '../pixels.ts';

export interface Crossing {
  x: number;
  y: number;
  response: number;
}

interface CrossingChoice {
  /** Least response; a clean black and white crossing gives about 8 × their difference. */
  leastResponse: number;
  /** At most so many, strongest first. */
  most: number;
}

export function crossingsOf(image: GreyImage, choice: CrossingChoice): Crossing[] {
  const response = responseOf(image);
  const found: Crossing[] = [];
  const { width, height } = image;
  for (let y = reach; y < height - reach; y++) {
    for (let i = y * width + reach; i < y * width + width - reach; i++) {
      if (response[i] < choice.leastResponse || !isPeak(response, width, i)) continue;
      found.push({ x: i - y * width, y, response: response[i] });
    }
  }
  found.sort((a, b) => b.response - a.response);
  return found.slice(0, choice.most);
}

const reach = 6;
/** Radius 5, every 22.5°, rounded to pixels: (5, 0), (5, 2), (4, 4), (2, 5) and on by quarter turns. */
const octant = [
  [5, 0],
  [5, 2],
  [4, 4],
  [2, 5],
] as const;

function circleOffsets(width: number): Int32Array {
  const offsets = new Int32Array(16);
  for (let n = 0; n < 16; n++) {
    let [x, y] = octant[n % 4] as readonly [number, number];
    for (let turn = 0; turn < n >> 2; turn++) [x, y] = [-y, x];
    offsets[n] = y * width + x;
  }
  return offsets;
}

function responseOf({ width, height, values }: GreyImage): Float32Array {
  const response = new Float32Array(width * height);
  const circle = circleOffsets(width);
  const ring = new Float32Array(16);
  for (let y = reach; y < height - reach; y++) {
    for (let i = y * width + reach; i < y * width + width - reach; i++) {
      // Two quick looks pass over plain wall and plain edges.
      const first = Math.abs(
        values[i + circle[0]] + values[i + circle[8]] - values[i + circle[4]] - values[i + circle[12]],
      );
      const second = Math.abs(
        values[i + circle[2]] + values[i + circle[10]] - values[i + circle[6]] - values[i + circle[14]],
      );
      if (first + second < 24) continue;
      let sum = 0;
      for (let n = 0; n < 16; n++) {
        ring[n] = values[i + circle[n]];
        sum += ring[n];
      }
      let quarters = 0;
      for (let n = 0; n < 4; n++) quarters += Math.abs(ring[n] + ring[n + 8] - ring[n + 4] - ring[n + 12]);
      let sides = 0;
      for (let n = 0; n < 8; n++) sides += Math.abs(ring[n] - ring[n + 8]);
      const within = (values[i] + values[i - 1] + values[i + 1] + values[i - width] + values[i + width]) / 5;
      response[i] = quarters - sides - Math.abs(sum - 16 * within);
    }
  }
  return response;
}

/** No larger response within two pixels; of equals the first. */
function isPeak(response: Float32Array, width: number, i: number): boolean {
  for (let dy = -2; dy <= 2; dy++) {
    for (let j = i + dy * width - 2; j <= i + dy * width + 2; j++) {
      if (response[j] > response[i] || (response[j] === response[i] && j < i)) return false;
    }
  }
  return true;
}
