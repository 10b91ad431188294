import type { Pixels } from '../pixels.ts';

/** EXIF tag 274: which way the stored rows lie in the displayed picture. */
export type Orientation = 1 | 2 | 3 | 4 | 5 | 6 | 7 | 8;

/**
 * Reads the orientation from an EXIF block (a TIFF header and its first directory); 1 where it is absent or
 * unreadable, since many programs write broken blocks.
 * Source: CIPA DC-008 (Exif 2.3) section 4.6, TIFF 6.0.
 */
export function exifOrientation(tiff: Uint8Array): Orientation {
  const view = new DataView(tiff.buffer, tiff.byteOffset, tiff.byteLength);
  if (tiff.length < 14) return 1;
  const order = view.getUint16(0);
  if (order !== 0x4949 && order !== 0x4d4d) return 1;
  const little = order === 0x4949;
  const directory = view.getUint32(4, little);
  if (directory + 2 > tiff.length) return 1;
  const entries = view.getUint16(directory, little);
  for (let i = 0; i < entries; i++) {
    const at = directory + 2 + 12 * i;
    if (at + 12 > tiff.length) return 1;
    if (view.getUint16(at, little) !== 0x0112) continue;
    const value = view.getUint16(at + 8, little);
    return value >= 1 && value <= 8 ? (value as Orientation) : 1;
  }
  return 1;
}

/** The picture as displayed. Orientation 1 is returned as it is; others are copied. */
export function oriented(pixels: Pixels, orientation: Orientation): Pixels {
  if (orientation === 1) return pixels;
  const { width, height, channels, data } = pixels;
  const turned = orientation >= 5;
  const out = new Uint8Array(data.length);
  const outWidth = turned ? height : width;
  const outHeight = turned ? width : height;
  // Displayed pixel (x, y) is stored at origin + x·stepX + y·stepY, in pixels.
  const { origin, stepX, stepY } = walkOf(orientation, width, height);
  for (let y = 0; y < outHeight; y++) {
    let from = (origin + y * stepY) * channels;
    let to = y * outWidth * channels;
    for (let x = 0; x < outWidth; x++) {
      for (let c = 0; c < channels; c++) out[to + c] = data[from + c];
      from += stepX * channels;
      to += channels;
    }
  }
  return { width: outWidth, height: outHeight, channels, data: out };
}

interface Walk {
  origin: number;
  stepX: number;
  stepY: number;
}

function walkOf(orientation: Orientation, width: number, height: number): Walk {
  const last = width - 1;
  const bottom = (height - 1) * width;
  switch (orientation) {
    case 2:
      return { origin: last, stepX: -1, stepY: width };
    case 3:
      return { origin: bottom + last, stepX: -1, stepY: -width };
    case 4:
      return { origin: bottom, stepX: 1, stepY: -width };
    case 5:
      return { origin: 0, stepX: width, stepY: 1 };
    case 6:
      return { origin: bottom, stepX: -width, stepY: 1 };
    case 7:
      return { origin: bottom + last, stepX: -width, stepY: -1 };
    case 8:
      return { origin: last, stepX: width, stepY: -1 };
    default:
      return { origin: 0, stepX: 1, stepY: width };
  }
}
