/**
 * A picture's file without anything but the picture: where and when and with what it was taken, thumbnails,
 * comments and appended films are dropped. The compressed picture itself is copied byte for byte, so that not
 * one pixel changes; its orientation and its colour profile stay, since it would look different without them.
 */
import { sizeFindings } from '../decode/decode-image.ts';
import { decodeLimits } from '../decode/decode-limits.ts';
import { type Refused, refusedWith } from '../finding.ts';
import { imageFound } from '../image-kinds.ts';
import { type StrippedFile, startsWith } from './strip-file.ts';
import { stripJpeg } from './strip-jpeg.ts';
import { stripPng } from './strip-png.ts';
import { stripWebp } from './strip-webp.ts';

export interface StrippedPicture {
  status: 'stripped';
  type: 'image/jpeg' | 'image/png' | 'image/webp';
  bytes: Uint8Array<ArrayBuffer>;
  /** As displayed: orientation carried out. */
  widthPx: number;
  heightPx: number;
}

/** Strips a JPEG, PNG or WebP; anything else, broken, cut short or huge is refused with the reason. Never throws. */
export function stripPicture(bytes: Uint8Array, limits = decodeLimits): StrippedPicture | Refused {
  const format = formats.find(({ is }) => is(bytes));
  if (!format) return refusedWith([imageFound('image', 'picture/unknown-format', { bytes: bytes.length })]);
  const name = format.type.slice(6).toUpperCase();
  let file: StrippedFile;
  try {
    file = format.strip(bytes);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refusedWith([imageFound('image', 'picture/broken', { format: name, reason })]);
  }
  const wrong = sizeFindings(file, limits);
  if (wrong.length > 0) return refusedWith(wrong);
  const turned = file.orientation >= 5;
  return {
    status: 'stripped',
    type: format.type,
    bytes: joined(file.parts),
    widthPx: turned ? file.heightPx : file.widthPx,
    heightPx: turned ? file.widthPx : file.heightPx,
  };
}

const formats = [
  { type: 'image/jpeg', is: (b: Uint8Array) => startsWith(b, 0, '\xff\xd8\xff'), strip: stripJpeg },
  { type: 'image/png', is: (b: Uint8Array) => startsWith(b, 0, '\x89PNG\r\n\x1a\n'), strip: stripPng },
  {
    type: 'image/webp',
    is: (b: Uint8Array) => startsWith(b, 0, 'RIFF') && startsWith(b, 8, 'WEBP'),
    strip: stripWebp,
  },
] as const;

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}
