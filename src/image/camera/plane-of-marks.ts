import type { Finding } from '../../engine/finding.ts';
import type { Refused } from '../finding.ts';
import { cameraBackProject, cameraProject, cameraTowards } from './camera-model.ts';
import type { Point } from './homography.ts';
import { marksToCamera } from './marks-check.ts';

export interface PlaneRequest {
  marks: readonly { px: readonly [number, number]; atM: readonly [number, number] }[];
  /** The marks lie so far behind the plane that is measured, seen from the camera. Default 0. */
  marksBehindM?: number;
}

/** Picture to plane and back, for taps beside a traced blank. */
export interface PlaneOfMarks {
  status: 'converged';
  toPlane(px: Point): Point;
  toPixel(atM: Point): Point;
  /** Standard error in the plane at a pixel, from the marks. */
  sigmaM(px: Point): number;
  marksRmsM: number;
  /** Distance of the camera from the plane, as far as the lens is known. */
  cameraM: number;
  leftOut: number[];
  findings: Finding[];
}

export function planeOfMarks(
  request: PlaneRequest,
  picture: { widthPx: number; heightPx: number },
): PlaneOfMarks | Refused {
  const marks = request.marks.map(({ px, atM }) => ({
    pixel: { x: px[0], y: px[1] },
    plane: { x: atM[0], y: atM[1] },
  }));
  const answer = marksToCamera(marks, picture);
  if (answer.status === 'refused') return answer;
  const { camera, distanceM } = cameraTowards(answer.fit.camera, request.marksBehindM ?? 0);
  return {
    status: 'converged',
    toPlane: (px) => cameraBackProject(camera, px),
    toPixel: (atM) => cameraProject(camera, atM),
    sigmaM: answer.fit.sigmaAtM,
    marksRmsM: answer.fit.marksRmsM,
    cameraM: distanceM,
    leftOut: answer.leftOut,
    findings: answer.findings,
  };
}
