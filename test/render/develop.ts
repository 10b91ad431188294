import { blur, type Canvas } from './canvas.ts';
import type { Random } from './random.ts';

/** An 8-bit picture, red green blue interleaved. */
export interface Picture {
  width: number;
  height: number;
  rgb: Uint8Array;
}

export interface Development {
  /** Blur of lens and sensor, standard deviation. */
  blurPx: number;
  /** Grain at full white in 8-bit steps. */
  grain: number;
  /** Amount of edge sharpening, as telephones do it. */
  sharpen: number;
  exposure: number;
}

export function developmentChoice(random: Random): Development {
  return {
    blurPx: random.between(0.5, 1.1),
    grain: random.between(1.5, 6),
    sharpen: random.chance(0.5) ? random.between(0, 0.8) : 0,
    exposure: random.between(0.75, 1.1),
  };
}

/** Lens blur, grain, tone curve, sharpening, rounding to bytes. */
export function develop(canvas: Canvas, random: Random, choice: Development): Picture {
  blur(canvas, choice.blurPx);
  addGrain(canvas, random, choice);
  const tone = toneTable();
  const encoded = new Float32Array(canvas.light.length);
  for (let i = 0; i < encoded.length; i++) {
    const light = canvas.light[i] * choice.exposure;
    encoded[i] = tone[light >= 1 ? 4095 : light <= 0 ? 0 : Math.round(light * 4095)];
  }
  const { width, height } = canvas;
  const rgb = new Uint8ClampedArray(encoded.length);
  for (let y = 0; y < height; y++) {
    const from = 3 * y * width;
    const up = y > 0 ? -width * 3 : 0;
    const down = y < height - 1 ? width * 3 : 0;
    for (let i = 0; i < 3 * width; i++) {
      const at = from + i;
      const left = i >= 3 ? -3 : 0;
      const right = i < 3 * width - 3 ? 3 : 0;
      const around = (encoded[at + left] + encoded[at + right] + encoded[at + up] + encoded[at + down]) / 4;
      rgb[at] = Math.floor(encoded[at] + choice.sharpen * (encoded[at] - around) + 0.5);
    }
  }
  return { width, height, rgb: new Uint8Array(rgb.buffer) };
}

/** Shot and read noise in linear light. */
function addGrain(canvas: Canvas, random: Random, choice: Development): void {
  const shot = choice.grain / 255 / 0.5;
  const read = 0.15 * shot;
  for (let i = 0; i < canvas.light.length; i++) {
    const level = Math.max(0, canvas.light[i]);
    canvas.light[i] += random.normal() * Math.sqrt(shot * shot * level * 0.25 + read * read * 0.05);
  }
}

/** The sRGB transfer curve (IEC 61966-2-1), in 4096 steps. */
function toneTable(): Float32Array {
  return Float32Array.from({ length: 4096 }, (_, i) => {
    const light = i / 4095;
    return 255 * (light <= 0.0031308 ? 12.92 * light : 1.055 * light ** (1 / 2.4) - 0.055);
  });
}
