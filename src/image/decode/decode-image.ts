/**
 * File bytes to pixels. The pixels are those of the picture as it is displayed: a JPEG's EXIF orientation is
 * carried out, so that a tap on the screen and the request's pixel places mean the same thing.
 */

import { said } from '../../engine/finding.ts';
import { type Refused, refusedWith } from '../finding.ts';
import type { ImageHeader, Pixels } from '../pixels.ts';
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
  if (format !== 'jpeg' && format !== 'png') return refused(foreignMessage(format, bytes.length));
  if (bytes.length > limits.mostBytes) {
    return refused(
      `the file has ${(bytes.length / 1e6).toFixed(0)} MB; at most ${limits.mostBytes / 1e6} MB are read`,
    );
  }
  const name = format.toUpperCase();
  try {
    const header = format === 'jpeg' ? jpegHeader(bytes) : pngHeader(bytes);
    const tooMuch = sizeMessage(header, limits);
    if (tooMuch !== undefined) return refused(tooMuch);
    const pixels = format === 'jpeg' ? decodeJpeg(bytes, limits.mostMegapixels) : decodePng(bytes);
    return { status: 'converged', pixels, format, statedDpi: header.statedDpi };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refused(`the ${name} file is broken or cut short (${reason}); copy or save it again`);
  }
}

function refused(message: string): Refused {
  return refusedWith([said('image', message)]);
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

function foreignMessage(format: Format, length: number): string {
  if (format === 'empty') return 'the file is empty';
  if (format === 'unknown') {
    return `the file (${length} bytes) is no picture this tool knows; give a JPEG or PNG`;
  }
  const extra = format === 'heic' ? ', or set the telephone’s camera to its most compatible format' : '';
  return `${format.toUpperCase()} is not read here; save the picture as JPEG or PNG${extra}`;
}

function sizeMessage(header: ImageHeader, limits: DecodeLimits): string | undefined {
  const { widthPx, heightPx } = header;
  if (Math.min(widthPx, heightPx) < limits.leastSidePx) {
    return `the picture is ${widthPx} × ${heightPx} px; each side needs at least ${limits.leastSidePx} px`;
  }
  const megapixels = (widthPx * heightPx) / 1e6;
  if (megapixels > limits.mostMegapixels) {
    return (
      `the picture is ${widthPx} × ${heightPx} px, ${megapixels.toFixed(0)} megapixels; at most ` +
      `${limits.mostMegapixels} are read: reduce it to half its size`
    );
  }
  return undefined;
}
