/** WebP: RFC 9649 (RIFF container, VP8, VP8L and VP8X chunks). */
import { exifOrientation } from '../decode/orientation.ts';
import { orientationBlock, type StrippedFile, startsWith } from './strip-file.ts';

interface Chunk {
  name: string;
  /** With name, length and filling byte. */
  whole: Uint8Array;
  content: Uint8Array;
}

/** Throws on broken bytes and on moving pictures. */
export function stripWebp(bytes: Uint8Array): StrippedFile {
  const chunks = chunksOf(bytes);
  if (chunks.some(({ name }) => name === 'ANIM' || name === 'ANMF'))
    throw new Error('it is a moving picture');
  const exif = chunks.find(({ name }) => name === 'EXIF')?.content;
  const orientation = exif ? exifOrientation(startsWith(exif, 0, 'Exif\0\0') ? exif.subarray(6) : exif) : 1;
  const kept = chunks
    .filter(({ name }) => ['VP8X', 'ICCP', 'ALPH', 'VP8 ', 'VP8L'].includes(name))
    .map((chunk) => (chunk.name === 'VP8X' ? flagsCleared(chunk.whole, orientation !== 1) : chunk.whole));
  const turn = orientation === 1 ? [] : [chunkOf('EXIF', orientationBlock(orientation))];
  const body = [...kept, ...turn];
  return { parts: [headerOf(body), ...body], ...sizeOf(chunks), orientation };
}

function chunksOf(bytes: Uint8Array): Chunk[] {
  const view = new DataView(bytes.buffer, bytes.byteOffset, bytes.byteLength);
  if (bytes.length < 20) throw new Error('the end is missing');
  const end = 8 + view.getUint32(4, true);
  if (end > bytes.length) throw new Error('the end is missing');
  const chunks: Chunk[] = [];
  for (let at = 12; at + 8 <= end; ) {
    const length = view.getUint32(at + 4, true);
    const next = at + 8 + length + (length % 2);
    if (at + 8 + length > end) throw new Error('a part runs beyond the end');
    chunks.push({
      name: String.fromCharCode(...bytes.subarray(at, at + 4)),
      whole: bytes.subarray(at, next),
      content: bytes.subarray(at + 8, at + 8 + length),
    });
    at = next;
  }
  return chunks;
}

function sizeOf(chunks: readonly Chunk[]): { widthPx: number; heightPx: number } {
  const [picture] = chunks.filter(({ name }) => ['VP8X', 'VP8 ', 'VP8L'].includes(name));
  const { name, content: c } = picture ?? { name: '', content: new Uint8Array() };
  if (!chunks.some(({ name: one }) => one === 'VP8 ' || one === 'VP8L') || c.length < 5)
    throw new Error('no picture in it');
  const three = (at: number) => c[at] | (c[at + 1] << 8) | (c[at + 2] << 16);
  if (name === 'VP8X') return { widthPx: three(4) + 1, heightPx: three(7) + 1 };
  if (name === 'VP8 ') return { widthPx: three(6) & 0x3fff, heightPx: (c[8] | (c[9] << 8)) & 0x3fff };
  const bits = three(1) + c[4] * 0x1000000;
  return { widthPx: (bits & 0x3fff) + 1, heightPx: (Math.floor(bits / 0x4000) & 0x3fff) + 1 };
}

/** Exif 0x08 and XMP 0x04 in the extended header's flags. */
function flagsCleared(whole: Uint8Array, keepsExif: boolean): Uint8Array {
  const header = whole.slice();
  header[8] = (header[8] & ~0x0c) | (keepsExif ? 0x08 : 0);
  return header;
}

function chunkOf(name: string, content: Uint8Array): Uint8Array {
  const chunk = new Uint8Array(8 + content.length + (content.length % 2));
  chunk.set([...name].map((letter) => letter.charCodeAt(0)));
  new DataView(chunk.buffer).setUint32(4, content.length, true);
  chunk.set(content, 8);
  return chunk;
}

function headerOf(body: readonly Uint8Array[]): Uint8Array {
  const header = new Uint8Array(12);
  header.set([...'RIFF\0\0\0\0WEBP'].map((letter) => letter.charCodeAt(0)));
  new DataView(header.buffer).setUint32(4, 4 + body.reduce((size, part) => size + part.length, 0), true);
  return header;
}
