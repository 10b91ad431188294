import jpeg from 'jpeg-js';
import type { ImageHeader, Pixels } from '../pixels.ts';
import { exifOrientation, type Orientation, oriented } from './orientation.ts';

/** Size and stated resolution from the markers, before decoding (ITU-T T.81 annex B; JFIF 1.02). Throws. */
export function jpegHeader(bytes: Uint8Array): ImageHeader {
  let statedDpi: number | undefined;
  for (const segment of jpegSegments(bytes)) {
    const { marker, at } = segment;
    if (marker === 0xe0 && ascii(bytes, at, 4) === 'JFIF') {
      const density = (bytes[at + 8] << 8) | bytes[at + 9];
      const unit = bytes[at + 7];
      if (density > 1 && unit === 1) statedDpi = density;
      if (density > 1 && unit === 2) statedDpi = density * 2.54;
    }
    const isFrame = marker >= 0xc0 && marker <= 0xcf && marker !== 0xc4 && marker !== 0xc8 && marker !== 0xcc;
    if (isFrame) {
      return {
        heightPx: (bytes[at + 1] << 8) | bytes[at + 2],
        widthPx: (bytes[at + 3] << 8) | bytes[at + 4],
        statedDpi,
      };
    }
  }
  throw new Error('no frame header found');
}

/** Red, green, blue as displayed: the orientation is carried out. Throws on broken data. */
export function decodeJpeg(bytes: Uint8Array, mostMegapixels: number): Pixels {
  const raw = jpeg.decode(bytes, {
    useTArray: true,
    formatAsRGBA: false,
    tolerantDecoding: false,
    maxResolutionInMP: mostMegapixels,
    maxMemoryUsageInMB: 4096,
  });
  const pixels: Pixels = { width: raw.width, height: raw.height, channels: 3, data: raw.data };
  return oriented(pixels, orientationOf(bytes));
}

function orientationOf(bytes: Uint8Array): Orientation {
  for (const { marker, at, length } of jpegSegments(bytes)) {
    if (marker === 0xe1 && ascii(bytes, at, 4) === 'Exif') {
      return exifOrientation(bytes.subarray(at + 6, at + length));
    }
  }
  return 1;
}

interface Segment {
  marker: number;
  /** First byte of the payload. */
  at: number;
  length: number;
}

/** Header segments up to the first scan. */
function* jpegSegments(bytes: Uint8Array): Generator<Segment> {
  let at = 2;
  while (at + 4 <= bytes.length) {
    if (bytes[at] !== 0xff) throw new Error(`no marker at byte ${at}`);
    const marker = bytes[at + 1];
    if (marker === 0xff) {
      at++;
      continue;
    }
    if (marker === 0xda || marker === 0xd9) return;
    const length = (bytes[at + 2] << 8) | bytes[at + 3];
    if (length < 2) throw new Error(`segment of length ${length} at byte ${at}`);
    yield { marker, at: at + 4, length: length - 2 };
    at += 2 + length;
  }
}

function ascii(bytes: Uint8Array, at: number, length: number): string {
  return String.fromCharCode(...bytes.subarray(at, at + length));
}
