/** Decodes a scan and measures its guides away from the page. */
import { decodeImage, scanImage } from '../../image/index.ts';
import { type ScanSaid, type ScanTask, usualDpi } from './scan-messages.ts';

const page = self as unknown as {
  postMessage(message: ScanSaid): void;
  onmessage: ((event: MessageEvent<ScanTask>) => void) | null;
};

page.onmessage = ({ data: { id, bytes, dpi: given } }) => {
  const decoded = decodeImage(bytes);
  if (decoded.status === 'refused') {
    page.postMessage({ id, says: 'refused', findings: decoded.findings });
    return;
  }
  const { pixels, statedDpi } = decoded;
  const dpi = given ?? (statedDpi && statedDpi >= 100 ? Math.round(statedDpi) : usualDpi);
  const onProgress = ({ share }: { share: number }) => page.postMessage({ id, says: 'progress', share });
  const scanned = scanImage({ dpi }, pixels, { statedDpi, onProgress });
  page.postMessage(
    scanned.status === 'refused'
      ? { id, says: 'refused', findings: scanned.findings }
      : {
          id,
          says: 'read',
          read: { widthPx: pixels.width, heightPx: pixels.height, dpi, statedDpi, scanned },
        },
  );
};
