import type { Finding } from '../../engine/finding.ts';
import { type Camera, cameraBackProject } from '../camera/camera-model.ts';
import type { Mark } from '../camera/camera-problem.ts';
import type { Point } from '../camera/homography.ts';
import { marksToCamera } from '../camera/marks-check.ts';
import { type Refused, refusedWith } from '../finding.ts';
import type { Pixels } from '../pixels.ts';
import { type CoarseRidges, coarsePath, coarseRidges } from './coarse-path.ts';
import { fineLook } from './fine-look.ts';
import type { RefinedCentreline } from './refine-centreline.ts';
import { rodFindings } from './rod-findings.ts';
import { blurFindings, endFindings, lostFinding, tracedFindings } from './trace-findings.ts';
import type { TracedPoint, TraceRequest } from './trace-request.ts';

export interface TraceOptions {
  /** Called as work goes on; `share` runs from 0 to 1. */
  onProgress?(progress: { stage: 'camera' | 'ridges' | 'path' | 'edges' | 'done'; share: number }): void;
  /** Places in the answer; at least 60. Default: one a centimetre, 101 to 401. */
  places?: number;
  /** The picture's lines where they were looked for already. */
  ridges?: CoarseRidges;
}

export interface Traced {
  status: 'converged';
  /** Butt to tip, at equal steps along the blank. */
  points: TracedPoint[];
  marksRmsM: number;
  /** `estimated` is true when six or more marks fixed it; else the values are mostly what is usual. */
  lens: { estimated: boolean; focalPx: number; centrePx: [number, number]; k1: number; k2: number };
  /** Index of each mark that was left out because it disagreed with the rest. */
  marksLeftOut: number[];
  /** Share of the length where both edges of the blank were seen. */
  seenShare: number;
  findings: Finding[];
}

export interface TraceLost {
  status: 'lost';
  /** How far the blank could be followed. */
  reachedPx: [number, number];
  marksRmsM: number;
  findings: Finding[];
}

/** Follows the bent blank in a photograph from butt to tip; see the folder's README for the method. */
export function traceImage(
  request: TraceRequest,
  pixels: Pixels,
  options: TraceOptions = {},
): Traced | TraceLost | Refused {
  const progress = options.onProgress ?? (() => {});
  progress({ stage: 'camera', share: 0 });
  const wrong = endFindings(request, pixels);
  const marks = request.marks.map(markOf);
  const camera = marksToCamera(marks, { widthPx: pixels.width, heightPx: pixels.height });
  if (camera.status === 'refused' || wrong.length > 0) {
    return refusedWith([...(camera.status === 'refused' ? camera.findings : []), ...wrong]);
  }
  const stops = [request.ends.butt, ...(request.via ?? []), request.ends.tip].map(pointOf);
  progress({ stage: 'ridges', share: 0.05 });
  const ridges = options.ridges ?? coarseRidges(pixels);
  progress({ stage: 'path', share: 0.45 });
  const coarse = coarsePath(ridges, stops);
  if (coarse.status === 'lost') {
    const [x, y] = [Math.round(coarse.reachedPx.x), Math.round(coarse.reachedPx.y)];
    const finding = lostFinding(coarse, stops.length, [x, y]);
    return {
      status: 'lost',
      reachedPx: [x, y],
      marksRmsM: camera.fit.marksRmsM,
      findings: [...camera.findings, finding],
    };
  }
  progress({ stage: 'edges', share: 0.7 });
  const [butt, tip] = [stops[0], stops[stops.length - 1]];
  const { refined, rods, tipBlurPx } = fineLook(pixels, { ...coarse, ridges }, { butt, tip });
  const points = placesAlong(refined, camera.fit.camera, options.places, (pixel) =>
    camera.fit.sigmaAtM(pixel),
  );
  progress({ stage: 'done', share: 1 });
  const { focalPx, centrePx, k1, k2 } = camera.fit.camera;
  const used = marks.length - camera.leftOut.length;
  return {
    status: 'converged',
    points,
    marksRmsM: camera.fit.marksRmsM,
    lens: { estimated: used >= 6, focalPx, centrePx: [centrePx.x, centrePx.y], k1, k2 },
    marksLeftOut: camera.leftOut,
    seenShare: refined.seenShare,
    findings: [
      ...camera.findings,
      ...rodFindings(rods, points, refined.seenShare),
      ...tracedFindings(refined, points, pixels),
      ...blurFindings(tipBlurPx, points),
    ],
  };
}

function pointOf(at: readonly [number, number]): Point {
  return { x: at[0], y: at[1] };
}

function markOf(mark: TraceRequest['marks'][number]): Mark {
  return { pixel: pointOf(mark.px), plane: pointOf(mark.atM) };
}

/** Equal steps along the blank in its plane. */
function placesAlong(
  refined: RefinedCentreline,
  camera: Camera,
  places: number | undefined,
  marksSigmaM: (pixel: Point) => number,
): TracedPoint[] {
  const { line, halfPx, sigmaPx } = refined;
  const plane = Array.from(line.x, (x, i) => cameraBackProject(camera, { x, y: line.y[i] }));
  const along = new Float64Array(plane.length);
  for (let i = 1; i < plane.length; i++) {
    along[i] = along[i - 1] + Math.hypot(plane[i].x - plane[i - 1].x, plane[i].y - plane[i - 1].y);
  }
  const total = along[along.length - 1];
  const count = Math.max(60, places ?? Math.min(401, Math.max(101, Math.round(total / 0.01) + 1)));
  const points: TracedPoint[] = [];
  let k = 0;
  for (let i = 0; i < count; i++) {
    const at = (total * i) / (count - 1);
    while (k < along.length - 2 && along[k + 1] < at) k++;
    const share = (at - along[k]) / (along[k + 1] - along[k] || 1);
    const mix = (values: ArrayLike<number>): number => values[k] + (values[k + 1] - values[k]) * share;
    const pixel = { x: mix(line.x), y: mix(line.y) };
    const perPx = Math.hypot(plane[k + 1].x - plane[k].x, plane[k + 1].y - plane[k].y) / line.stepPx;
    points.push({
      xM: plane[k].x + (plane[k + 1].x - plane[k].x) * share,
      yM: plane[k].y + (plane[k + 1].y - plane[k].y) * share,
      sigmaM: Math.hypot(mix(sigmaPx) * perPx, marksSigmaM(pixel)),
      px: [pixel.x, pixel.y],
      halfWidthPx: mix(halfPx),
    });
  }
  return points;
}
