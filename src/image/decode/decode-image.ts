/**
 * File bytes to pixels. The pixels are those of the picture as it is displayed: a JPEG's EXIF orientation is
 * carried out, so that a tap on the screen and the request's pixel places mean the same thing.
 */

import type { Finding } from '../../engine/finding.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import type { Pixels } from '../pixels.ts';
import { type DecodeLimits, decodeLimits } from './decode-limits.ts';
import { decodeJpeg, jpegHeader } from './jpeg.ts';

import { decodePng, pngHeader } from './png.ts';

export { type DecodeLimits, decodeLimits };

export interface Decoded {
  status: 'converged';
  pixels: Pixels;
  format: 'jpeg' | 'png';
  /** Resolution stated in the file, if any; scanners write it, and it may be wrong. */
  statedDpi?: number;
}

/** Decodes a JPEG or PNG; a broken, huge or foreign file is refused with the reason. Never throws on bad bytes. */
export function decodeImage(bytes: Uint8Array, limits = decodeLimits): Decoded | Refused {
  const format = formatOf(bytes);
  if (format !== 'jpeg' && format !== 'png') return refusedWith([foreign(format, bytes.length)]);
  if (bytes.length > limits.mostBytes) {
    const values = { megabytes: Math.round(bytes.length / 1e6), most: limits.mostBytes / 1e6 };
    return refusedWith([imageFound('image', 'picture/large-file', values)]);
  }
  try {
    const header = format === 'jpeg' ? jpegHeader(bytes) : pngHeader(bytes);
    const wrong = sizeFindings(header, limits);
    if (wrong.length > 0) return refusedWith(wrong);
    const pixels = format === 'jpeg' ? decodeJpeg(bytes, limits.mostMegapixels) : decodePng(bytes);
    return { status: 'converged', pixels, format, statedDpi: header.statedDpi };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const values = { format: format.toUpperCase(), reason };
    return refusedWith([imageFound('image', 'picture/broken', values)]);
  }
}

type Format = 'jpeg' | 'png' | 'webp' | 'heic' | 'tiff' | 'gif' | 'bmp' | 'empty' | 'unknown';

function formatOf(bytes: Uint8Array): Format {
  if (bytes.length === 0) return 'empty';
  const starts = (at: number, text: string): boolean =>
    [...text].every((letter, i) => bytes[at + i] === letter.charCodeAt(0));
  if (bytes[0] === 0xff && bytes[1] === 0xd8) return 'jpeg';
  if (bytes[0] === 0x89 && starts(1, 'PNG\r\n')) return 'png';
  if (starts(0, 'RIFF') && starts(8, 'WEBP')) return 'webp';
  if (starts(4, 'ftyp')) return 'heic';
  if (starts(0, 'II*\0') || starts(0, 'MM\0*')) return 'tiff';
  if (starts(0, 'GIF8')) return 'gif';
  if (starts(0, 'BM')) return 'bmp';
  return 'unknown';
}

function foreign(format: Format, bytes: number): Finding {
  if (format === 'empty') return imageFound('image', 'picture/empty', {});
  if (format === 'unknown') return imageFound('image', 'picture/unknown-format', { bytes });
  return imageFound('image', 'picture/other-format', { format: format.toUpperCase() });
}

/** A picture too small to show anything, or too large to be read. */
export function sizeFindings(
  { widthPx, heightPx }: { widthPx: number; heightPx: number },
  { leastSidePx, mostMegapixels }: DecodeLimits,
): Finding[] {
  const size = { widthPx, heightPx };
  if (Math.min(widthPx, heightPx) < leastSidePx) {
    return [imageFound('image', 'picture/small', { ...size, leastPx: leastSidePx })];
  }
  const megapixels = (widthPx * heightPx) / 1e6;
  if (megapixels <= mostMegapixels) return [];
  const values = { ...size, megapixels: Math.round(megapixels), most: mostMegapixels };
  return [imageFound('image', 'picture/many-pixels', values)];
}
