import { convertIndexedToRgb, type DecodedPng, decode } from 'fast-png';
import type { ImageHeader, Pixels } from '../pixels.ts';

/** Size and stated resolution before decoding (W3C PNG, IHDR and pHYs). Throws on a file too short. */
export function pngHeader(bytes: Uint8Array): ImageHeader {
  if (bytes.length < 33) throw new Error('no header');
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  return { widthPx: view.getUint32(16), heightPx: view.getUint32(20), statedDpi: statedDpi(bytes, view) };
}

function statedDpi(bytes: Uint8Array, view: DataView): number | undefined {
  let at = 33;
  while (at + 21 <= bytes.length) {
    const length = view.getUint32(at);
    const type = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (type === 'IDAT') return undefined;
    if (type === 'pHYs' && bytes[at + 16] === 1) return Math.round(view.getUint32(at + 8) * 0.0254 * 10) / 10;
    at += 12 + length;
  }
  return undefined;
}

/** Eight bits a channel, grey or red-green-blue, laid on white where it is transparent. Throws on broken data. */
export function decodePng(bytes: Uint8Array): Pixels {
  const png = decode(bytes, { checkCrc: true });
  const { width, height } = png;
  if (png.palette) {
    const channels = png.palette[0].length;
    return flattened(width, height, channels, convertIndexedToRgb(png));
  }
  const samples = png.depth < 8 ? unpacked(png) : toBytes(png);
  if (samples.length !== width * height * png.channels) {
    throw new Error(`${samples.length} samples where ${width * height * png.channels} were announced`);
  }
  return flattened(width, height, png.channels, samples);
}

function toBytes(png: DecodedPng): Uint8Array {
  if (png.depth === 8) return png.data as Uint8Array;
  const out = new Uint8Array(png.data.length);
  for (let i = 0; i < out.length; i++) out[i] = png.data[i] >> 8;
  return out;
}

/** Grey of 1, 2 or 4 bits, packed row by row from the high bit. */
function unpacked(png: DecodedPng): Uint8Array {
  const { width, height, depth, data } = png;
  const out = new Uint8Array(width * height);
  const rowBytes = Math.ceil((width * depth) / 8);
  const perByte = 8 / depth;
  const most = (1 << depth) - 1;
  for (let y = 0; y < height; y++) {
    for (let x = 0; x < width; x++) {
      const byte = data[y * rowBytes + Math.floor(x / perByte)];
      const shift = 8 - depth * ((x % perByte) + 1);
      out[y * width + x] = (((byte >> shift) & most) * 255) / most;
    }
  }
  return out;
}

/** Drops an opacity channel by laying the picture on white. */
function flattened(width: number, height: number, channels: number, data: Uint8Array): Pixels {
  if (channels === 1 || channels === 3) return { width, height, channels, data };
  const kept = (channels - 1) as 1 | 3;
  const out = new Uint8Array(width * height * kept);
  for (let i = 0; i < width * height; i++) {
    const opacity = data[i * channels + kept] / 255;
    for (let c = 0; c < kept; c++)
      out[i * kept + c] = Math.round(255 + (data[i * channels + c] - 255) * opacity);
  }
  return { width, height, channels: kept, data: out };
}
