import jpeg from 'jpeg-js';
import type { Page } from 'playwright-core';
import { type Photo, paintPhoto } from '../render/photo.ts';

/** What a telephone writes about itself and the place into a picture, invented. */
export const tellTale = 'Invented Camera, 47.1234 N 8.5678 E';

/** A painted photograph as a JPEG file that tells where it was taken, with its truth. */
export function paintedFile(choice: Parameters<typeof paintPhoto>[0]): { photo: Photo; file: Buffer } {
  const photo = paintPhoto(choice);
  const { width, height, rgb } = photo.picture;
  const rgba = new Uint8Array(width * height * 4).fill(255);
  for (let i = 0; i < width * height; i++) rgba.set(rgb.subarray(3 * i, 3 * i + 3), 4 * i);
  const plain = jpeg.encode({ width, height, data: rgba }, 92).data;
  const exif = Buffer.from(`Exif\0\0II*\0\x08\0\0\0\0\0${tellTale}`, 'latin1');
  const segment = Buffer.from([0xff, 0xe1, (exif.length + 2) >> 8, (exif.length + 2) & 255]);
  return { photo, file: Buffer.concat([plain.subarray(0, 20), segment, exif, plain.subarray(20)]) };
}

/** Taps a pixel of the picture, wherever it is shown. */
export async function tapPixel(page: Page, [x, y]: readonly [number, number]): Promise<void> {
  const image = page.locator('.photo-stage img').first();
  await page.locator('.photo-stage').first().scrollIntoViewIfNeeded();
  const box = await image.boundingBox();
  const width = Number(await image.getAttribute('width'));
  if (!box) throw new Error('the picture is not shown');
  const scale = box.width / width;
  await page.mouse.click(box.x + (x + 0.5) * scale, box.y + (y + 0.5) * scale);
}
