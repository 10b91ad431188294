/**
 * A picture's file without anything but the picture: where and when and with what it was taken, thumbnails,
 * comments and appended films are dropped. The compressed picture itself is copied byte for byte, so that not
 * one pixel changes; its orientation and its colour profile stay, since it would look different without them.
 */
import { said } from '../../engine/finding.ts';
import { decodeLimits } from '../decode/decode-limits.ts';
import { type Refused, refusedWith } from '../finding.ts';
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
  if (!format) return refused('this is no JPEG, PNG or WebP picture; save it as one of them');
  const name = format.type.slice(6).toUpperCase();
  let file: StrippedFile;
  try {
    file = format.strip(bytes);
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    return refused(
      `the ${name} file is broken or cut short (${reason}); copy it again, or take another picture`,
    );
  }
  const wrong = sizeWrong(file, limits);
  if (wrong) return refused(wrong);
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

function sizeWrong({ widthPx, heightPx }: StrippedFile, limits: typeof decodeLimits): string | undefined {
  const size = `the picture has ${widthPx} × ${heightPx} px`;
  const megapixels = (widthPx * heightPx) / 1e6;
  if (megapixels > limits.mostMegapixels) {
    return `${size}, ${megapixels.toFixed(0)} megapixels; at most ${limits.mostMegapixels} are taken: set the camera to a smaller picture`;
  }
  if (Math.min(widthPx, heightPx) < limits.leastSidePx) return `${size}: too small to show anything`;
  return undefined;
}

function joined(parts: readonly Uint8Array[]): Uint8Array<ArrayBuffer> {
  const whole = new Uint8Array(parts.reduce((size, part) => size + part.length, 0));
  let at = 0;
  for (const part of parts) {
    whole.set(part, at);
    at += part.length;
  }
  return whole;
}

function refused(message: string): Refused {
  return refusedWith([said('image', message)]);
}
