/** A taped-up or bare blank before a wall with printed marks, as a camera on its stand sees it again and again. */
import type { BentBlank } from './bent-blank.ts';
import type { Camera } from './camera.ts';
import type { Place } from './canvas.ts';
import type { Picture } from './develop.ts';
import { paintWallMark } from './mark-scene.ts';
import { standScene } from './stand-photo.ts';

export interface LiveFrames {
  camera: Camera;
  /** The wall as it was measured: true places. */
  wall: { number: number; atM: [number, number] }[];
  paint(blank: BentBlank, index: number, hangs: boolean): Picture;
}

/** Marks of 45 mm outer radius, numbered from 1. */
export function liveFrames(
  blanks: readonly BentBlank[],
  { seed, widthPx, radiusM = 0.045 }: { seed: number; widthPx: number; radiusM?: number },
): LiveFrames {
  const { camera, marks, paint } = standScene(blanks, {
    seed,
    widthPx,
    marks: 6,
    mark: (canvas, eye, at, number) =>
      paintWallMark(canvas, number, ({ x, y }: Place) =>
        eye.project({ x: at.x + radiusM * x, y: at.y + radiusM * y }),
      ),
  });
  return { camera, paint, wall: marks.map(({ x, y }, i) => ({ number: i + 1, atM: [x, y] })) };
}
