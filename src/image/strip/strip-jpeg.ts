/** JPEG: ITU-T T.81 annex B (markers), JFIF 1.02, ICC.1 annex B.4 (colour profile), Adobe's APP14 (from memory). */
import { exifOrientation, type Orientation } from '../decode/orientation.ts';
import { orientationBlock, type StrippedFile, startsWith } from './strip-file.ts';

/** Keeps what decoding needs and the colour profile; ends at the end marker, whatever is appended. Throws. */
export function stripJpeg(bytes: Uint8Array): StrippedFile {
  const kept: Uint8Array[] = [];
  let opening: Uint8Array[] = [];
  let orientation: Orientation = 1;
  let size: { widthPx: number; heightPx: number } | undefined;
  let at = 2;
  for (;;) {
    const marker = markerAt(bytes, at);
    at = marker.after;
    if (marker.code === 0xd9) break;
    const end = at + lengthAt(bytes, at);
    if (end > bytes.length) throw new Error('a part runs beyond the end');
    const whole = bytes.subarray(at - 2, end);
    if (isFrame(marker.code)) size = { heightPx: wordAt(bytes, at + 3), widthPx: wordAt(bytes, at + 5) };
    if (marker.code === 0xe0 && startsWith(bytes, at + 2, 'JFIF\0')) opening = [withoutThumbnail(whole)];
    else if (marker.code === 0xe1 && startsWith(bytes, at + 2, 'Exif\0\0') && orientation === 1)
      orientation = exifOrientation(bytes.subarray(at + 8, end));
    else if (isNeeded(marker.code, bytes, at + 2)) kept.push(whole);
    at = end;
    if (marker.code === 0xda) {
      const scanEnd = endOfScan(bytes, at);
      kept.push(bytes.subarray(at, scanEnd));
      at = scanEnd;
    }
  }
  if (!size) throw new Error('no picture in it');
  const turn = orientation === 1 ? [] : [orientationSegment(orientation)];
  const [start, close] = [Uint8Array.from([0xff, 0xd8]), Uint8Array.from([0xff, 0xd9])];
  return { parts: [start, ...opening, ...turn, ...kept, close], ...size, orientation };
}

/** The next marker; stray bytes before it, which some cameras leave, are passed over as decoders do. */
function markerAt(bytes: Uint8Array, from: number): { code: number; after: number } {
  let at = from;
  while (at < bytes.length && bytes[at] !== 0xff) at++;
  while (bytes[at] === 0xff) at++;
  if (at >= bytes.length) throw new Error('the end is missing');
  return { code: bytes[at], after: at + 1 };
}

function wordAt(bytes: Uint8Array, at: number): number {
  return (bytes[at] << 8) | bytes[at + 1];
}

function lengthAt(bytes: Uint8Array, at: number): number {
  if (at + 2 > bytes.length) throw new Error('the end is missing');
  const length = wordAt(bytes, at);
  if (length < 2) throw new Error(`a part of length ${length} at byte ${at}`);
  return length;
}

function isFrame(code: number): boolean {
  return code >= 0xc0 && code <= 0xcf && code !== 0xc4 && code !== 0xc8 && code !== 0xcc;
}

/** Everything but application data and comments; of application data the colour profile and Adobe's transform. */
function isNeeded(code: number, bytes: Uint8Array, at: number): boolean {
  if (code === 0xfe) return false;
  if (code < 0xe0 || code > 0xef) return true;
  if (code === 0xe2) return startsWith(bytes, at, 'ICC_PROFILE\0');
  return code === 0xee && startsWith(bytes, at, 'Adobe');
}

function withoutThumbnail(segment: Uint8Array): Uint8Array {
  if (segment.length < 18) throw new Error('its JFIF header is too short');
  const kept = segment.slice(0, 18);
  kept.set([0, 16], 2);
  kept.set([0, 0], 16);
  return kept;
}

/** In entropy-coded data 0xff is followed by 0 or by a restart marker; anything else ends it (T.81 B.1.1.5). */
function endOfScan(bytes: Uint8Array, from: number): number {
  for (let at = from; at + 1 < bytes.length; at++) {
    if (bytes[at] !== 0xff) continue;
    const next = bytes[at + 1];
    if (next === 0 || next === 0xff || (next >= 0xd0 && next <= 0xd7)) continue;
    return at;
  }
  throw new Error('the end is missing');
}

function orientationSegment(orientation: Orientation): Uint8Array {
  const block = orientationBlock(orientation);
  const exif = [...'Exif\0\0'].map((letter) => letter.charCodeAt(0));
  return Uint8Array.from([0xff, 0xe1, 0, 2 + exif.length + block.length, ...exif, ...block]);
}
