/** A picture's pixels as every part of this folder takes them. */
export interface Pixels {
  width: number;
  height: number;
  /** 1: grey, 3: red green blue, 4: with opacity, which is ignored. */
  channels: 1 | 3 | 4;
  /** Row by row from the top left, interleaved. */
  data: Uint8Array | Uint8ClampedArray;
}

/** A single-valued image, 0..255, row by row. */
export interface GreyImage {
  width: number;
  height: number;
  values: Float32Array;
}

/**
 * Luma of ITU-R BT.601 (0.299, 0.587, 0.114) averaged over blocks of `factor` × `factor` pixels; a rest
 * narrower than a block is left out. Block pixel (i, j) is centred at factor·(i + ½) − ½ in the original.
 */
export function greyOf(pixels: Pixels, factor = 1): GreyImage {
  const width = Math.floor(pixels.width / factor);
  const height = Math.floor(pixels.height / factor);
  const values = new Float32Array(width * height);
  const sums = new Float64Array(width);
  const share = 1 / (factor * factor);
  for (let y = 0; y < height; y++) {
    sums.fill(0);
    for (let dy = 0; dy < factor; dy++) addLuma(pixels, factor * y + dy, factor, sums);
    for (let x = 0; x < width; x++) values[y * width + x] = sums[x] * share;
  }
  return { width, height, values };
}

/** Adds one row's luma, block by block. */
function addLuma({ data, channels, width }: Pixels, row: number, factor: number, sums: Float64Array): void {
  let at = row * width * channels;
  for (let x = 0; x < sums.length; x++) {
    let sum = 0;
    for (let dx = 0; dx < factor; dx++, at += channels) {
      sum += channels === 1 ? data[at] : 0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2];
    }
    sums[x] += sum;
  }
}

/** Means of blocks of 2 × 2; a last row or column without its pair is left out. */
export function greyHalved({ width, height, values }: GreyImage): GreyImage {
  const half = { width: width >> 1, height: height >> 1 };
  const out = new Float32Array(half.width * half.height);
  for (let y = 0; y < half.height; y++) {
    for (let x = 0, at = 2 * y * width; x < half.width; x++, at += 2) {
      out[y * half.width + x] =
        0.25 * (values[at] + values[at + 1] + values[at + width] + values[at + width + 1]);
    }
  }
  return { ...half, values: out };
}

/** Means of blocks of `factor` × `factor` pixels, opacity dropped; a rest narrower than a block is left out. */
export function pixelsReduced(pixels: Pixels, factor: number): Pixels {
  const { channels, data } = pixels;
  const kept = channels === 1 ? 1 : 3;
  const width = Math.floor(pixels.width / factor);
  const height = Math.floor(pixels.height / factor);
  const out = new Uint8Array(width * height * kept);
  const sums = new Float32Array(width * kept);
  for (let y = 0; y < height; y++) {
    sums.fill(0.5 * factor * factor);
    for (let dy = 0; dy < factor; dy++) {
      let at = (y * factor + dy) * pixels.width * channels;
      for (let x = 0; x < width; x++) {
        for (let dx = 0; dx < factor; dx++) {
          for (let c = 0; c < kept; c++) sums[x * kept + c] += data[at + c];
          at += channels;
        }
      }
    }
    for (let i = 0; i < sums.length; i++) out[y * sums.length + i] = sums[i] / (factor * factor);
  }
  return { width, height, channels: kept, data: out };
}

/** Bilinear BT.601 luma at a place of the picture; places beyond the border take the border's value. */
export function lumaAt(pixels: Pixels, x: number, y: number): number {
  const { width, height, channels, data } = pixels;
  const px = Math.min(width - 1, Math.max(0, x));
  const py = Math.min(height - 1, Math.max(0, y));
  const i = Math.min(Math.max(0, width - 2), Math.floor(px));
  const j = Math.min(Math.max(0, height - 2), Math.floor(py));
  const u = px - i;
  const v = py - j;
  const right = width > 1 ? channels : 0;
  const down = height > 1 ? width * channels : 0;
  const at = (j * width + i) * channels;
  const upper = (1 - u) * lumaOf(data, at, channels) + u * lumaOf(data, at + right, channels);
  const lower = (1 - u) * lumaOf(data, at + down, channels) + u * lumaOf(data, at + down + right, channels);
  return upper + (lower - upper) * v;
}

function lumaOf(data: Pixels['data'], at: number, channels: number): number {
  return channels === 1 ? data[at] : 0.299 * data[at] + 0.587 * data[at + 1] + 0.114 * data[at + 2];
}

/** Bilinear value of a grey image; places beyond the border take the border's value. */
export function greyAt(image: GreyImage, x: number, y: number): number {
  const { width, height, values } = image;
  const px = Math.min(width - 1.001, Math.max(0, x));
  const py = Math.min(height - 1.001, Math.max(0, y));
  const i = Math.floor(px);
  const j = Math.floor(py);
  const u = px - i;
  const v = py - j;
  const at = j * width + i;
  const upper = values[at] + (values[at + 1] - values[at]) * u;
  const lower = values[at + width] + (values[at + width + 1] - values[at + width]) * u;
  return upper + (lower - upper) * v;
}

/** What a header tells before anything large is allocated. */
export interface ImageHeader {
  widthPx: number;
  heightPx: number;
  statedDpi?: number;
}
