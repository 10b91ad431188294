import { createRequire } from 'node:module';
import type cvModule from '@techstark/opencv-js';

export type OpenCv = typeof cvModule;

/**
 * OpenCV 4.12 compiled to WebAssembly, the outside reference for image work; ready after about a second.
 * The module answers `then` with itself for ever, so it must never be awaited, nor imported by a loader that
 * awaits what it imports: it is required, and handed out wrapped.
 */
export async function openCvReady(): Promise<{ cv: OpenCv }> {
  const cv = createRequire(import.meta.url)('@techstark/opencv-js') as OpenCv;
  if (typeof cv.Mat !== 'function') {
    await new Promise<void>((resolve) => {
      cv.onRuntimeInitialized = () => resolve();
    });
  }
  return { cv };
}
