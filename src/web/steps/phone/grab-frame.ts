import type { SmallFrame } from './frame-check.ts';

/** The video's frame of this moment as a JPEG file. */
export async function grabFrame(video: HTMLVideoElement, name: string): Promise<File> {
  const canvas = drawn(video, video.videoWidth, video.videoHeight);
  const blob = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.95));
  if (!blob) throw new Error('the camera gave no picture');
  return new File([blob], name, { type: 'image/jpeg' });
}

const smallWidth = 960;

/** A small copy in grey, to judge by. */
export function smallFrame(video: HTMLVideoElement): SmallFrame {
  const width = smallWidth;
  const height = Math.max(1, Math.round((width * video.videoHeight) / Math.max(1, video.videoWidth)));
  const canvas = drawn(video, width, height);
  const rgba = canvas.getContext('2d')?.getImageData(0, 0, width, height).data ?? new Uint8ClampedArray();
  const grey = new Uint8ClampedArray(width * height);
  // Rec. 601 luma: enough to compare two looks by.
  for (let i = 0; i < grey.length; i++)
    grey[i] = 0.299 * rgba[4 * i] + 0.587 * rgba[4 * i + 1] + 0.114 * rgba[4 * i + 2];
  return { width, height, grey };
}

function drawn(video: HTMLVideoElement, width: number, height: number): HTMLCanvasElement {
  const canvas = document.createElement('canvas');
  canvas.width = width;
  canvas.height = height;
  canvas.getContext('2d', { willReadFrequently: true })?.drawImage(video, 0, 0, width, height);
  return canvas;
}
