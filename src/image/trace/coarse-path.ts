import type { Point } from '../camera/homography.ts';
import { greyOf, type Pixels } from '../pixels.ts';
import { pathCosts, type RidgeInput } from './path-costs.ts';
import { type PathAnswer, pathSearch } from './path-search.ts';
import { ridgeHeadings } from './ridge-chains.ts';
import { type RidgePoints, ridgePoints } from './ridge-points.ts';

export interface CoarseChoice {
  /** The longer side is reduced to at most this for the search. */
  sidePx: number;
  scales: readonly number[];
  leastStrength: number;
  mostPoints: number;
}

/** The reduced picture's ridges, for whoever looks at them after the path. */
export type CoarseRidges = RidgeInput & {
  /** Picture pixels a ridge pixel stands for, each way. */
  factor: number;
};

export const coarseChoice: CoarseChoice = {
  sidePx: 2200,
  scales: [1, 1.8, 3.2],
  leastStrength: 6,
  mostPoints: 80_000,
};

/** Every line of a picture, in a picture reduced for the search. */
export function coarseRidges(pixels: Pixels, choice: CoarseChoice = coarseChoice): CoarseRidges {
  const factor = Math.max(1, Math.ceil(Math.max(pixels.width, pixels.height) / choice.sidePx));
  const grey = greyOf(pixels, factor);
  const points = ridgePoints(grey, choice);
  const support = ridgeHeadings(points, grey.width, grey.height, { reachPx: 14, widestTurnRad: 0.35 });
  return {
    factor,
    points,
    support,
    colours: coloursAt(pixels, factor, points),
    width: grey.width,
    height: grey.height,
    costs: pathCosts,
  };
}

/** The blank's course through the whole picture, good to a few pixels; places are in the picture's pixels. */
export function coarsePath(ridges: CoarseRidges, stops: readonly Point[]): PathAnswer {
  const { factor } = ridges;
  const answer = pathSearch({ ...ridges, stops: stops.map((stop) => toReduced(stop, factor)) });
  return answer.status === 'converged'
    ? { ...answer, path: answer.path.map((at) => toPicture(at, factor)) }
    : { ...answer, reachedPx: toPicture(answer.reachedPx, factor) };
}

/** A place of the picture in the reduced one, and back. */
export function toReduced({ x, y }: Point, factor: number): Point {
  return { x: (x + 0.5) / factor - 0.5, y: (y + 0.5) / factor - 0.5 };
}

export function toPicture({ x, y }: Point, factor: number): Point {
  return { x: (x + 0.5) * factor - 0.5, y: (y + 0.5) * factor - 0.5 };
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
