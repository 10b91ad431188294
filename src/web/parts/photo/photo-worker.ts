/** Where pictures are looked at: decoded once by the browser, then traced as often as it is asked for. */
import { findEnds, findMarks, lookLive, type Pixels } from '../../../image/index.ts';
import { decodedPixels, fetchPixels, pixelsOfBitmap } from './fetch-pixels.ts';
import type { FromPhotoWorker, PhotoProgress, PhotoTask, ToPhotoWorker } from './photo-messages.ts';
import { tracePhoto } from './trace-photo.ts';

const page = self as unknown as {
  postMessage(message: FromPhotoWorker): void;
  onmessage: ((event: MessageEvent<ToPhotoWorker>) => void) | null;
};
let kept: { address: string; pixels: Promise<Pixels> } | undefined;

page.onmessage = async ({ data: { id, task } }) => {
  const progress = (so: PhotoProgress) => page.postMessage({ id, says: 'progress', progress: so });
  try {
    progress({ stage: 'picture', share: 0 });
    page.postMessage({ id, says: 'done', answer: await answerTo(task, progress) });
  } catch (error) {
    kept = undefined;
    page.postMessage({ id, says: 'failed', reason: error instanceof Error ? error.message : String(error) });
  }
};

async function answerTo(task: PhotoTask, progress: (so: PhotoProgress) => void) {
  if (task.does === 'live') return lookLive(pixelsOfBitmap(task.frame), task.known);
  const pixels = await pixelsOf(task);
  switch (task.does) {
    case 'find':
      return findMarks(pixels, { onProgress: (share) => progress({ stage: 'marks', share }) });
    case 'ends':
      return findEnds(task.known, pixels);
    case 'trace':
      return tracePhoto(task, pixels, progress);
  }
}

function pixelsOf(task: Exclude<PhotoTask, { does: 'live' }>): Promise<Pixels> {
  if (task.does === 'find' && task.blob) return decodedPixels(task.blob);
  const { address } = task;
  if (kept?.address !== address) kept = { address, pixels: fetchPixels(address) };
  return kept.pixels;
}
