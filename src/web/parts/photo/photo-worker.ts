/** Where pictures are looked at: decoded once by the browser, then traced as often as it is asked for. */
import { findMarks, lookLive, type Pixels } from '../../../image/index.ts';
import { fetchPixels, pixelsOfBitmap } from './fetch-pixels.ts';
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
  const pixels = await pixelsOf(task.address);
  return task.does === 'find'
    ? findMarks(pixels, { onProgress: (share) => progress({ stage: 'marks', share }) })
    : tracePhoto(task, pixels, progress);
}

function pixelsOf(address: string): Promise<Pixels> {
  if (kept?.address !== address) kept = { address, pixels: fetchPixels(address) };
  return kept.pixels;
}
