import type { Point } from '../camera/homography.ts';
import { greyOf, type Pixels } from '../pixels.ts';
import { type PathAnswer, type PathInput, pathCosts, pathSearch } from './path-search.ts';
import { ridgeHeadings } from './ridge-chains.ts';
import { type RidgePoints, ridgePoints } from './ridge-points.ts';

export interface CoarseChoice {
  /** The longer side is reduced to at most this for the search. */
  sidePx: number;
  scales: readonly number[];
  leastStrength: number;
  mostPoints: number;
  onStage?(stage: 'ridges' | 'path'): void;
}

/** The reduced picture's ridges, for whoever looks at them after the path. */
export type CoarseRidges = Omit<PathInput, 'stops'> & {
  /** Picture pixels a ridge pixel stands for, each way. */
  factor: number;
};

export const coarseChoice: CoarseChoice = {
  sidePx: 2200,
  scales: [1, 1.8, 3.2],
  leastStrength: 6,
  mostPoints: 80_000,
};

/** The blank's course through the whole picture, good to a few pixels; places are in the picture's pixels. */
export function coarsePath(
  pixels: Pixels,
  stops: readonly Point[],
  choice: CoarseChoice,
): PathAnswer & { ridges: CoarseRidges } {
  const factor = Math.max(1, Math.ceil(Math.max(pixels.width, pixels.height) / choice.sidePx));
  choice.onStage?.('ridges');
  const grey = greyOf(pixels, factor);
  const points = ridgePoints(grey, choice);
  choice.onStage?.('path');
  const support = ridgeHeadings(points, grey.width, grey.height, { reachPx: 14, widestTurnRad: 0.35 });
  const ridges: CoarseRidges = {
    factor,
    points,
    support,
    colours: coloursAt(pixels, factor, points),
    width: grey.width,
    height: grey.height,
    costs: pathCosts,
  };
  const answer = pathSearch({
    ...ridges,
    stops: stops.map((stop) => ({ x: (stop.x + 0.5) / factor - 0.5, y: (stop.y + 0.5) / factor - 0.5 })),
  });
  const toFull = (at: Point): Point => ({ x: (at.x + 0.5) * factor - 0.5, y: (at.y + 0.5) * factor - 0.5 });
  return answer.status === 'converged'
    ? { ...answer, ridges, path: answer.path.map(toFull) }
    : { ...answer, ridges, reachedPx: toFull(answer.reachedPx) };
}

/** Mean red, green, blue of the block under each point, interleaved. */
function coloursAt(pixels: Pixels, factor: number, points: RidgePoints): Float32Array {
  const { width, channels, data } = pixels;
  const colours = new Float32Array(3 * points.count);
  const share = 1 / (factor * factor);
  for (let i = 0; i < points.count; i++) {
    const left = Math.round(points.x[i]) * factor;
    const top = Math.round(points.y[i]) * factor;
    for (let dy = 0; dy < factor; dy++) {
      for (let dx = 0; dx < factor; dx++) {
        const at = ((top + dy) * width + left + dx) * channels;
        for (let c = 0; c < 3; c++) colours[3 * i + c] += data[at + (channels === 1 ? 0 : c)] * share;
      }
    }
  }
  return colours;
}
