/** PNG: W3C Portable Network Graphics (third edition), chunks of section 11. */
import { exifOrientation, type Orientation } from '../decode/orientation.ts';
import { orientationBlock, type StrippedFile } from './strip-file.ts';

/** What decoding and colour need; all else, text, time and Exif among it, goes. */
const needed = [
  'IHDR',
  'PLTE',
  'IDAT',
  'IEND',
  'tRNS',
  'gAMA',
  'cHRM',
  'sRGB',
  'iCCP',
  'cICP',
  'sBIT',
  'pHYs',
];

/** Throws on bytes that are no PNG or end before its end. */
export function stripPng(bytes: Uint8Array): StrippedFile {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  const kept: Uint8Array[] = [];
  let orientation: Orientation = 1;
  let at = 8;
  for (let name = ''; name !== 'IEND'; ) {
    if (at + 12 > bytes.length) throw new Error('the end is missing');
    const length = view.getUint32(at);
    const end = at + 12 + length;
    if (end > bytes.length) throw new Error('a part runs beyond the end');
    name = String.fromCharCode(...bytes.subarray(at + 4, at + 8));
    if (kept.length === 0 && (name !== 'IHDR' || length !== 13)) throw new Error('no header');
    if (name === 'eXIf') orientation = exifOrientation(bytes.subarray(at + 8, end - 4));
    if (needed.includes(name)) kept.push(bytes.subarray(at, end));
    at = end;
  }
  const [header, ...rest] = kept;
  const turn = orientation === 1 ? [] : [chunkOf('eXIf', orientationBlock(orientation))];
  return {
    parts: [bytes.subarray(0, 8), header, ...turn, ...rest],
    widthPx: view.getUint32(16),
    heightPx: view.getUint32(20),
    orientation,
  };
}

function chunkOf(name: string, content: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(12 + content.length);
  const view = new DataView(chunk.buffer);
  view.setUint32(0, content.length);
  chunk.set(
    [...name].map((letter) => letter.charCodeAt(0)),
    4,
  );
  chunk.set(content, 8);
  view.setUint32(8 + content.length, checkOf(chunk.subarray(4, 8 + content.length)));
  return chunk;
}

/** The check of a chunk: CRC-32 of ISO 3309, as in annex D of the standard. */
function checkOf(bytes: Uint8Array): number {
  let check = 0xffffffff;
  for (const byte of bytes) {
    check ^= byte;
    for (let bit = 0; bit < 8; bit++) check = (check >>> 1) ^ (check & 1 ? 0xedb88320 : 0);
  }
  return (check ^ 0xffffffff) >>> 0;
}
