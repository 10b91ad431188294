import type { Pixels } from '../../../image/index.ts';

/** Rows drawn at a time: browsers limit how large a canvas may be, some to 16 megapixels. */
const rowsAtATime = 256;

/**
 * A stored picture's pixels as it is displayed, decoded by the browser (so whatever it can show can be read),
 * red, green, blue. Rejects with a sentence where it cannot be fetched or decoded.
 */
export async function fetchPixels(address: string): Promise<Pixels> {
  const answer = await fetch(address).catch(() => undefined);
  if (!answer?.ok) throw new Error('the picture cannot be fetched; look whether Fairbend is still running');
  return decodedPixels(await answer.blob());
}

/** Rejects with a sentence where the browser cannot decode it. */
export async function decodedPixels(blob: Blob): Promise<Pixels> {
  const bitmap = await createImageBitmap(blob).catch(() => undefined);
  if (!bitmap) throw new Error('this browser cannot decode the picture; save it as JPEG and add it again');
  return pixelsOfBitmap(bitmap);
}

/** Red, green, blue of a decoded picture, which is let go. */
export function pixelsOfBitmap(bitmap: ImageBitmap): Pixels {
  try {
    return readRows(bitmap);
  } finally {
    bitmap.close();
  }
}

function readRows(bitmap: ImageBitmap): Pixels {
  const { width, height } = bitmap;
  const canvas = new OffscreenCanvas(width, Math.min(rowsAtATime, height));
  const context = canvas.getContext('2d', { willReadFrequently: true });
  if (!context) throw new Error('this browser gives no canvas to read the picture with');
  const data = new Uint8Array(width * height * 3);
  for (let top = 0; top < height; top += rowsAtATime) {
    const rows = Math.min(rowsAtATime, height - top);
    context.fillStyle = '#fff';
    context.fillRect(0, 0, width, rows);
    context.drawImage(bitmap, 0, -top);
    const rgba = context.getImageData(0, 0, width, rows).data;
    let to = top * width * 3;
    for (let from = 0; from < rgba.length; from += 4) {
      data[to++] = rgba[from];
      data[to++] = rgba[from + 1];
      data[to++] = rgba[from + 2];
    }
  }
  return { width, height, channels: 3, data };
}
