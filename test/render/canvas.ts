/**
 * A canvas of linear light for renderings with known truth. Coordinates are pixels, origin at the top left
 * corner of the top left pixel's centre: the centre of pixel (i, j) is at (i, j).
 */
export interface Canvas {
  width: number;
  height: number;
  /** Linear red, green, blue, 0..1 and above, interleaved. */
  light: Float32Array;
}

export interface Colour {
  red: number;
  green: number;
  blue: number;
}

export interface Place {
  x: number;
  y: number;
}

export function canvasOf(width: number, height: number): Canvas {
  return { width, height, light: new Float32Array(width * height * 3) };
}

/** Mixes a colour into one pixel; `coverage` 0..1. */
export function blend(canvas: Canvas, pixel: number, colour: Colour, coverage: number): void {
  const light = canvas.light;
  const at = pixel * 3;
  light[at] += (colour.red - light[at]) * coverage;
  light[at + 1] += (colour.green - light[at + 1]) * coverage;
  light[at + 2] += (colour.blue - light[at + 2]) * coverage;
}

/** Dims one pixel, as a shadow does. */
export function dim(canvas: Canvas, pixel: number, factor: number): void {
  canvas.light[pixel * 3] *= factor;
  canvas.light[pixel * 3 + 1] *= factor;
  canvas.light[pixel * 3 + 2] *= factor;
}

/** Fills a simple polygon; edges are softened over one pixel by 4 × 4 samples. */
export function fillPolygon(canvas: Canvas, corners: readonly Place[], colour: Colour, opacity = 1): void {
  const xs = corners.map((corner) => corner.x);
  const ys = corners.map((corner) => corner.y);
  const left = Math.max(0, Math.floor(Math.min(...xs)));
  const right = Math.min(canvas.width - 1, Math.ceil(Math.max(...xs)));
  const top = Math.max(0, Math.floor(Math.min(...ys)));
  const bottom = Math.min(canvas.height - 1, Math.ceil(Math.max(...ys)));
  const samples = 4;
  const cover = new Float32Array(Math.max(0, right - left + 2));
  for (let y = top; y <= bottom; y++) {
    cover.fill(0);
    for (let sub = 0; sub < samples; sub++) {
      addSpans(corners, y + (sub + 0.5) / samples - 0.5, left, right, 1 / samples, cover);
    }
    for (let x = left; x <= right; x++) {
      if (cover[x - left] > 0) blend(canvas, y * canvas.width + x, colour, cover[x - left] * opacity);
    }
  }
}

/** Adds the even-odd spans of one scan line to the coverage row, exact along x. */
function addSpans(
  corners: readonly Place[],
  y: number,
  left: number,
  right: number,
  weight: number,
  cover: Float32Array,
): void {
  const crossings: number[] = [];
  for (let i = 0; i < corners.length; i++) {
    const a = corners[i];
    const b = corners[(i + 1) % corners.length];
    if (a.y <= y !== b.y <= y) crossings.push(a.x + ((y - a.y) / (b.y - a.y)) * (b.x - a.x));
  }
  crossings.sort((a, b) => a - b);
  for (let i = 0; i + 1 < crossings.length; i += 2) {
    const from = Math.max(crossings[i], left - 0.5);
    const to = Math.min(crossings[i + 1], right + 0.5);
    for (let x = Math.floor(from + 0.5); x - 0.5 < to; x++) {
      const part = Math.min(to, x + 0.5) - Math.max(from, x - 0.5);
      if (part > 0 && x >= left && x <= right) cover[x - left] += part * weight;
    }
  }
}

/** Separable Gaussian blur in place; `sigma` in pixels. */
export function blur(canvas: Canvas, sigma: number): void {
  if (sigma <= 0.05) return;
  const reach = Math.ceil(3.5 * sigma);
  const kernel = new Float32Array(2 * reach + 1);
  let sum = 0;
  for (let k = -reach; k <= reach; k++) {
    kernel[k + reach] = Math.exp((-k * k) / (2 * sigma * sigma));
    sum += kernel[k + reach];
  }
  for (let k = 0; k < kernel.length; k++) kernel[k] /= sum;
  blurRows(canvas, kernel);
  blurColumns(canvas, kernel);
}

/** Along each row; the border's value repeats beyond it. */
function blurRows({ width, height, light }: Canvas, kernel: Float32Array): void {
  const reach = (kernel.length - 1) / 2;
  const padded = new Float32Array(3 * (width + 2 * reach));
  for (let y = 0; y < height; y++) {
    const from = 3 * y * width;
    padded.set(light.subarray(from, from + 3 * width), 3 * reach);
    for (let k = 0; k < 3 * reach; k++) {
      padded[k] = light[from + (k % 3)];
      padded[3 * (width + reach) + k] = light[from + 3 * (width - 1) + (k % 3)];
    }
    for (let i = 0; i < 3 * width; i++) {
      let sum = 0;
      for (let k = 0; k < kernel.length; k++) sum += padded[i + 3 * k] * kernel[k];
      light[from + i] = sum;
    }
  }
}

/** Down all columns at once: whole rows are added, and the rows still needed are kept aside. */
function blurColumns({ width, height, light }: Canvas, kernel: Float32Array): void {
  const reach = (kernel.length - 1) / 2;
  const wide = 3 * width;
  const row = (y: number): Float32Array => light.slice(y * wide, (y + 1) * wide);
  const near = Array.from({ length: kernel.length }, (_, k) =>
    row(Math.min(height - 1, Math.max(0, k - reach))),
  );
  const sum = new Float64Array(wide);
  for (let y = 0; y < height; y++) {
    sum.fill(0);
    for (const [k, weight] of kernel.entries()) {
      const values = near[k];
      for (let i = 0; i < wide; i++) sum[i] += values[i] * weight;
    }
    light.set(sum, y * wide);
    near.push(row(Math.min(height - 1, y + 1 + reach)));
    near.shift();
  }
}
