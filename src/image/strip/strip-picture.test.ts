import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { describe, expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { decodeImage } from '../decode/decode-image.ts';
import type { Orientation } from '../decode/orientation.ts';
import { stripPicture } from './strip-picture.ts';

const width = 48;
const height = 32;
const latin = (text: string) => [...text].map((letter) => letter.charCodeAt(0));
const asText = (bytes: Uint8Array) => Buffer.from(bytes).toString('latin1');
const tellTale = ['Invented Camera', 'GPSLATITUDE', 'xpacket', 'a comment', '47.1234', 'THUMBNAIL', 'film'];

/** A TIFF block: orientation, maker, place; what tells on the builder stands in it as text. */
function exif(orientation: Orientation): number[] {
  const entries = [
    [0x01, 0x12, 0, 3, 0, 0, 0, 1, 0, orientation, 0, 0],
    [0x01, 0x0f, 0, 2, 0, 0, 0, 16, 0, 0, 0, 38],
  ];
  return [
    ...[0x4d, 0x4d, 0, 42, 0, 0, 0, 8, 0, entries.length],
    ...entries.flat(),
    ...[0, 0, 0, 0],
    ...latin('Invented Camera\0GPSLATITUDE 47.1234 THUMBNAIL'),
  ];
}

const segment = (code: number, content: number[]) => [
  0xff,
  code,
  (content.length + 2) >> 8,
  (content.length + 2) & 255,
  ...content,
];

const rgba = new Uint8Array(width * height * 4).map((_, i) => (i % 4 === 3 ? 255 : (i * 7) & 255));
const plain = new Uint8Array(jpeg.encode({ width, height, data: rgba }, 92).data);

/** A JPEG as a telephone writes it: Exif, XMP, IPTC, comment, maker's block, a film behind its end. */
function phoneJpeg(orientation: Orientation): Uint8Array {
  return Uint8Array.from([
    ...plain.subarray(0, 20),
    ...segment(0xe1, [...latin('Exif\0\0'), ...exif(orientation)]),
    ...segment(0xe1, latin('http://ns.adobe.com/xap/1.0/\0<?xpacket GPSLATITUDE 47.1234?>')),
    ...segment(0xe2, latin('ICC_PROFILE\0\x01\x01colours')),
    ...segment(0xe2, latin('MPF\0 THUMBNAIL')),
    ...segment(0xed, latin('Photoshop 3.0\0 47.1234')),
    ...segment(0xfe, latin('a comment')),
    ...plain.subarray(20),
    ...latin('film ftypmp42 GPSLATITUDE'),
  ]);
}

function stripped(bytes: Uint8Array) {
  const answer = stripPicture(bytes);
  if (answer.status === 'refused') throw new Error(inWords(answer.findings[0]));
  return answer;
}

function refusal(bytes: Uint8Array): string {
  const answer = stripPicture(bytes);
  return answer.status === 'refused' ? inWords(answer.findings[0]) : 'taken';
}

function pixelsOf(bytes: Uint8Array) {
  const answer = decodeImage(bytes);
  if (answer.status !== 'converged') throw new Error(inWords(answer.findings[0]));
  return answer.pixels;
}

describe('a JPEG', () => {
  test('loses place, camera, comment, thumbnail and film; keeps every pixel, its turn and its colours', () => {
    for (const orientation of [1, 3, 6, 8] as const) {
      const photo = phoneJpeg(orientation);
      for (const word of tellTale) expect(asText(photo)).toContain(word);
      const bare = stripped(photo);
      for (const word of tellTale) expect(asText(bare.bytes)).not.toContain(word);
      expect(asText(bare.bytes)).toContain('ICC_PROFILE');
      expect(pixelsOf(bare.bytes)).toEqual(pixelsOf(photo));
      expect([bare.widthPx, bare.heightPx]).toEqual(orientation < 5 ? [width, height] : [height, width]);
      expect(stripped(bare.bytes).bytes).toEqual(bare.bytes);
    }
  });
  test('cut short anywhere is refused, never half kept', () => {
    const photo = phoneJpeg(6).subarray(0, phoneJpeg(6).length - 27);
    for (let cut = 3; cut < photo.length - 1; cut += 97) {
      expect(refusal(photo.subarray(0, cut)), `cut at ${cut}`).toContain('broken or cut short');
    }
  });
  test('of more than fifty megapixels is refused with its size', () => {
    const huge = plain.slice();
    const frame = asText(huge).indexOf('\xff\xc0');
    huge.set([0x27, 0x10, 0x1f, 0x40], frame + 5);
    expect(refusal(huge)).toContain('8000 × 10000 px, 80 megapixels');
  });
});

function pngChunk(name: string, content: number[]): number[] {
  const length = [content.length >> 24, content.length >> 16, content.length >> 8, content.length];
  return [...length.map((byte) => byte & 255), ...latin(name), ...content, 0, 0, 0, 0];
}

describe('a PNG', () => {
  const bare = encode({ width, height, channels: 3, depth: 8, data: rgba.slice(0, width * height * 3) });
  const told = Uint8Array.from([
    ...bare.subarray(0, 33),
    ...pngChunk('tEXt', latin('Comment\0a comment GPSLATITUDE')),
    ...pngChunk('iTXt', latin('XML:com.adobe.xmp\0<?xpacket 47.1234?>')),
    ...pngChunk('eXIf', exif(1)),
    ...pngChunk('tIME', [7, 234, 1, 1, 1, 1, 1]),
    ...bare.subarray(33),
    ...latin('film'),
  ]);
  test('loses its texts, its time and its Exif, and not one byte of the picture', () => {
    expect(stripped(told).bytes).toEqual(new Uint8Array(bare));
  });
  test('keeps a turn stated in Exif, with a valid check', () => {
    const turned = Uint8Array.from([
      ...bare.subarray(0, 33),
      ...pngChunk('eXIf', exif(6)),
      ...bare.subarray(33),
    ]);
    const answer = stripped(turned);
    expect([answer.widthPx, answer.heightPx]).toEqual([height, width]);
    // The decoder verifies the check of every chunk.
    expect(pixelsOf(answer.bytes).data).toEqual(pixelsOf(new Uint8Array(bare)).data);
    expect(asText(answer.bytes)).not.toContain('Invented');
  });
  test('cut short is refused', () => {
    for (const cut of [9, 20, 40, bare.length - 1])
      expect(refusal(bare.subarray(0, cut))).toContain('broken or cut short');
  });
});

describe('a WebP', () => {
  const chunk = (name: string, content: number[]) => [
    ...latin(name),
    ...[content.length & 255, content.length >> 8, 0, 0],
    ...content,
    ...(content.length % 2 ? [0] : []),
  ];
  const riff = (...chunks: number[][]) => {
    const body = [...latin('WEBP'), ...chunks.flat()];
    return Uint8Array.from([...latin('RIFF'), body.length & 255, body.length >> 8, 0, 0, ...body]);
  };
  // Headers only (RFC 9649): 48 × 32, lossy; no decoder for it here.
  const lossy = chunk('VP8 ', [0x30, 1, 0, 0x9d, 1, 0x2a, width, 0, height, 0, 1, 2, 3]);
  const extended = (flags: number) => chunk('VP8X', [flags, 0, 0, 0, width - 1, 0, 0, height - 1, 0, 0]);
  test('loses Exif and XMP and the flags that announce them', () => {
    const told = riff(
      extended(0x0c),
      lossy,
      chunk('EXIF', exif(1)),
      chunk('XMP ', latin('<?xpacket 47.1234 GPSLATITUDE?>')),
    );
    const answer = stripped(told);
    expect(answer.bytes).toEqual(riff(extended(0), lossy));
    expect([answer.widthPx, answer.heightPx]).toEqual([width, height]);
  });
  test('keeps a turn, and nothing else of its Exif', () => {
    const answer = stripped(riff(extended(0x08), lossy, chunk('EXIF', exif(8))));
    expect([answer.widthPx, answer.heightPx]).toEqual([height, width]);
    expect(asText(answer.bytes)).not.toContain('Invented');
    expect(stripped(answer.bytes).bytes).toEqual(answer.bytes);
  });
  test('without the extended header is sized from the picture itself', () => {
    expect(stripped(riff(lossy))).toMatchObject({ widthPx: width, heightPx: height });
    const bits = (width - 1) | ((height - 1) << 14);
    const lossless = chunk('VP8L', [0x2f, bits & 255, (bits >> 8) & 255, (bits >> 16) & 255, bits >>> 24, 9]);
    expect(stripped(riff(lossless))).toMatchObject({ widthPx: width, heightPx: height });
  });
  test('that moves, or is cut short, is refused', () => {
    expect(refusal(riff(extended(2), chunk('ANIM', [0, 0]), lossy))).toContain('moving picture');
    const whole = riff(extended(0), lossy);
    expect(refusal(whole.subarray(0, whole.length - 3))).toContain('broken or cut short');
  });
});

test('what is no picture is refused', () => {
  for (const text of ['', 'station,drop', '<svg/>', '%PDF-1.7', '\0\0\0\x18ftypheic'])
    expect(refusal(Uint8Array.from(latin(text)))).toContain('no picture known here');
});
