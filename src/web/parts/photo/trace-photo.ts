import {
  type Camera,
  cameraAwayM,
  cameraBackProject,
  cameraOverPlane,
  marksToCamera,
  type Pixels,
  traceImage,
} from '../../../image/index.ts';
import type { PhotoProgress, TraceAnswer, TraceTask } from './photo-messages.ts';

/** The curve of a picture in the blank's own plane, and the rings that were tapped. */
export function tracePhoto(
  { request, standOffM, rings }: TraceTask,
  pixels: Pixels,
  onProgress: (progress: PhotoProgress) => void,
): TraceAnswer {
  const traced = traceImage(request, pixels, { onProgress });
  if (traced.status !== 'converged') return { traced, rings: [], cameraAwayM: undefined };
  const marks = request.marks.map(({ px, atM }) => ({
    pixel: { x: px[0], y: px[1] },
    plane: { x: atM[0], y: atM[1] },
  }));
  const answer = marksToCamera(marks, { widthPx: pixels.width, heightPx: pixels.height });
  if (answer.status !== 'converged') return { traced, rings: [], cameraAwayM: undefined };
  const { camera, sigmaAtM } = answer.fit;
  const over = cameraOverPlane(camera, standOffM);
  const placeOf = (px: readonly [number, number]) => backProject(over, px);
  return {
    traced:
      standOffM === 0
        ? traced
        : { ...traced, points: traced.points.map((point) => ({ ...point, ...placeOf(point.px) })) },
    rings: rings.map((ring) => ({
      ...ring,
      ...placeOf(ring.px),
      sigmaM: sigmaAtM({ x: ring.px[0], y: ring.px[1] }),
    })),
    cameraAwayM: cameraAwayM(camera),
  };
}

function backProject(camera: Camera, [x, y]: readonly [number, number]) {
  const at = cameraBackProject(camera, { x, y });
  return { xM: at.x, yM: at.y };
}
