import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { describe, expect, test } from 'vitest';
import { inWords } from '../../../test/support/in-words.ts';
import { decodeImage } from './decode-image.ts';
import { exifOrientation, type Orientation, oriented } from './orientation.ts';

const width = 40;
const height = 24;

/** A picture whose four corners differ: red, green, blue, white. */
function corners(): Uint8Array {
  const rgb = new Uint8Array(width * height * 3).fill(20);
  const paint = (x0: number, y0: number, colour: number[]): void => {
    for (let y = y0; y < y0 + 8; y++) for (let x = x0; x < x0 + 8; x++) rgb.set(colour, 3 * (y * width + x));
  };
  paint(0, 0, [250, 10, 10]);
  paint(width - 8, 0, [10, 250, 10]);
  paint(0, height - 8, [10, 10, 250]);
  paint(width - 8, height - 8, [250, 250, 250]);
  return rgb;
}

let plainJpeg: Uint8Array | undefined;

function jpegBytes(orientation?: number): Uint8Array {
  plainJpeg ??= encodedJpeg();
  return orientation === undefined ? plainJpeg : withExif(plainJpeg, orientation);
}

function encodedJpeg(): Uint8Array {
  const rgb = corners();
  const rgba = new Uint8Array(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) rgba.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  return new Uint8Array(jpeg.encode({ width, height, data: rgba }, 95).data);
}

/** Puts an EXIF block (big-endian TIFF, one entry) behind the start marker. */
function withExif(bytes: Uint8Array, orientation: number): Uint8Array {
  const tiff = [
    0x4d,
    0x4d,
    0,
    42,
    0,
    0,
    0,
    8,
    0,
    1,
    0x01,
    0x12,
    0,
    3,
    0,
    0,
    0,
    1,
    0,
    orientation,
    0,
    0,
    0,
    0,
    0,
    0,
  ];
  const exif = [0x45, 0x78, 0x69, 0x66, 0, 0, ...tiff];
  const length = exif.length + 2;
  return Uint8Array.from([0xff, 0xd8, 0xff, 0xe1, length >> 8, length & 255, ...exif, ...bytes.subarray(2)]);
}

function refusal(bytes: Uint8Array): string {
  const answer = decodeImage(bytes);
  if (answer.status !== 'refused') throw new Error(`expected a refusal, got ${answer.status}`);
  return answer.findings.map((finding) => `${finding.path}: ${inWords(finding)}`).join('\n');
}

describe('decoding', () => {
  test('a PNG comes back byte for byte, in grey, colour, with opacity and with 16 bits', () => {
    const rgb = corners();
    const whole = decodeImage(encode({ width, height, channels: 3, depth: 8, data: rgb }));
    expect(whole).toMatchObject({
      status: 'converged',
      format: 'png',
      pixels: { width, height, channels: 3 },
    });
    if (whole.status === 'converged') expect(Array.from(whole.pixels.data)).toEqual(Array.from(rgb));
    const deep = Uint16Array.from(rgb, (value) => value * 257);
    const sixteen = decodeImage(encode({ width, height, channels: 3, depth: 16, data: deep }));
    if (sixteen.status === 'converged') expect(Array.from(sixteen.pixels.data)).toEqual(Array.from(rgb));
    const clear = new Uint8Array(width * height * 2);
    const grey = decodeImage(encode({ width, height, channels: 2, depth: 8, data: clear }));
    if (grey.status === 'converged') {
      expect(grey.pixels.channels).toBe(1);
      expect(grey.pixels.data.every((value) => value === 255)).toBe(true);
    }
    expect([sixteen.status, grey.status]).toEqual(['converged', 'converged']);
  });

  test('a JPEG is turned as its orientation says', () => {
    // Where the red corner of the stored picture ends up, per EXIF: 1 top left, 3 bottom right, 6 top right, 8 bottom left.
    const places: [number, number, number][] = [
      [1, 3, 3],
      [2, width - 4, 3],
      [3, width - 4, height - 4],
      [4, 3, height - 4],
      [5, 3, 3],
      [6, height - 4, 3],
      [7, height - 4, width - 4],
      [8, 3, width - 4],
    ];
    for (const [orientation, x, y] of places) {
      const answer = decodeImage(jpegBytes(orientation));
      if (answer.status !== 'converged') throw new Error(JSON.stringify(answer));
      const { pixels } = answer;
      expect([pixels.width, pixels.height]).toEqual(orientation < 5 ? [width, height] : [height, width]);
      const [red, green, blue] = pixels.data.subarray(3 * (y * pixels.width + x));
      expect(red, `orientation ${orientation}`).toBeGreaterThan(180);
      expect(Math.max(green, blue)).toBeLessThan(80);
    }
  });

  test('an orientation and its inverse give the picture back', () => {
    const pixels = { width, height, channels: 3 as const, data: corners() };
    const inverse = [0, 1, 2, 3, 4, 5, 8, 7, 6] as const;
    for (let o = 1; o <= 8; o++) {
      const back = oriented(oriented(pixels, o as Orientation), inverse[o] as Orientation);
      expect(Array.from(back.data)).toEqual(Array.from(pixels.data));
    }
  });

  test('a broken EXIF block counts as upright', () => {
    expect(exifOrientation(Uint8Array.from([1, 2, 3]))).toBe(1);
    expect(exifOrientation(Uint8Array.from([0x49, 0x49, 42, 0, 255, 255, 255, 0, 1, 0, 0, 0, 0, 0]))).toBe(1);
  });

  test('broken, foreign, empty and huge files are refused with the reason', () => {
    const png = encode({ width, height, channels: 3, depth: 8, data: corners() });
    expect(refusal(new Uint8Array())).toContain('empty');
    expect(refusal(png.slice(0, 80))).toContain('PNG file is broken');
    const flipped = png.slice();
    flipped[60] ^= 255;
    expect(refusal(flipped)).toContain('PNG file is broken');
    const photo = jpegBytes();
    expect(refusal(photo.slice(0, photo.length >> 1))).toContain('JPEG file is broken');
    expect(refusal(new TextEncoder().encode('station,drop\n1,2\n'))).toContain('no picture known here');
    expect(refusal(new TextEncoder().encode('\0\0\0\x18ftypheic'))).toContain('HEIC');
    const huge = png.slice();
    new DataView(huge.buffer).setUint32(16, 9000);
    new DataView(huge.buffer).setUint32(20, 8000);
    expect(refusal(huge)).toContain('megapixels');
  });
});
