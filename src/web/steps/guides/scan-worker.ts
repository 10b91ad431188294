/** Decodes a scan, or a picture of the reference sheet, and measures its guides away from the page. */

import { imageFound } from '../../../image/image-kinds.ts';
import { decodeImage, flattenSheet, type Pixels, scanImage } from '../../../image/index.ts';
import { type ScanSaid, type ScanTask, usualDpi } from './scan-messages.ts';

const page = self as unknown as {
  postMessage(message: ScanSaid): void;
  onmessage: ((event: MessageEvent<ScanTask>) => void) | null;
};

page.onmessage = ({ data }) => {
  readScan(data).then(
    (said) => page.postMessage(said),
    (error: unknown) => {
      const reason = error instanceof Error ? error.message : String(error);
      const finding = imageFound('image', 'scan/unreadable', { reason });
      page.postMessage({ id: data.id, says: 'refused', findings: [finding] });
    },
  );
};

async function readScan({ id, bytes, dpi: given, onSheet }: ScanTask): Promise<ScanSaid> {
  const progress = (share: number) => page.postMessage({ id, says: 'progress', share });
  const decoded = decodeImage(bytes);
  if (decoded.status === 'refused') return { id, says: 'refused', findings: decoded.findings };
  const flat = onSheet ? flattenSheet(decoded.pixels, (share) => progress(0.5 * share)) : undefined;
  if (flat?.status === 'refused') return { id, says: 'refused', findings: flat.findings };
  const { pixels } = flat ?? decoded;
  const statedDpi = flat ? undefined : decoded.statedDpi;
  const dpi = given ?? flat?.dpi ?? (statedDpi && statedDpi >= 100 ? Math.round(statedDpi) : usualDpi);
  const begun = flat ? 0.5 : 0;
  const scanned = scanImage({ dpi }, pixels, {
    statedDpi,
    onProgress: ({ share }) => progress(begun + (1 - begun) * share),
  });
  if (scanned.status === 'refused') return { id, says: 'refused', findings: scanned.findings };
  return {
    id,
    says: 'read',
    read: {
      widthPx: pixels.width,
      heightPx: pixels.height,
      dpi,
      statedDpi,
      flat: flat && (await pictureOf(flat.pixels)),
      scanned: { ...scanned, findings: [...(flat?.findings ?? []), ...scanned.findings] },
    },
  };
}

/** Pixels of three channels as a picture that the page can show. */
async function pictureOf({ width, height, data }: Pixels): Promise<Blob | undefined> {
  const canvas = new OffscreenCanvas(width, height);
  const context = canvas.getContext('2d');
  if (!context) return undefined;
  const image = context.createImageData(width, height);
  for (let from = 0, to = 0; from < data.length; from += 3, to += 4) {
    image.data.set(data.subarray(from, from + 3), to);
    image.data[to + 3] = 255;
  }
  context.putImageData(image, 0, 0);
  return canvas.convertToBlob({ type: 'image/jpeg', quality: 0.85 });
}
