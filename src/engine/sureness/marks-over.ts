/**
 * How the best places of the guides answer to what readings could still tell, how far they lie apart over all
 * blanks that fit, and what keeping the proposed ones costs there.
 *
 * Along each direction the guides are placed anew a step to either side; the chord is the slope. A chord as long
 * as the posterior is wide and not a derivative: the best layout of a minimax moves in corners. What such
 * straight lines leave out (what no reading shows, and the corners) is measured on a few blanks drawn at large
 * and added to the variance.
 */
import { freeRod } from '../bench/free-rod.ts';
import type { Rod } from '../bend/rod.ts';
import type { LadderRequest } from '../layout/ladder-request.ts';
import type { LayoutRequest } from '../layout/layout-request.ts';
import { dot } from '../numerics/dot.ts';
import { drawStates, sameScale } from '../stiffness/draw-states.ts';
import { type Posterior, rodAt, rodOf, spreadAt } from '../stiffness/posterior.ts';
import { type MarkSpread, type PlacedAnew, type PlaceSearch, placeAnew } from './mark-spread.ts';
import { quantile, reachOf95 } from './spread.ts';

export interface MarksQuestion {
  posterior: Posterior;
  /** What the marks were proposed for, on the fitted blank. */
  request: LayoutRequest & LadderRequest;
  proposedFromTipM: readonly number[];
}
export interface MarksOver {
  /** Per direction, one slope per mark, in metres per standard deviation. */
  slopes: number[][];
  /** Of each mark, over all blanks that fit. */
  variance: number[];
  /** As the layout's own sureness has it, on the same blanks drawn at large. */
  spread: MarkSpread;
}
export interface MarksOverOptions {
  /** Length of a chord to either side, in standard deviations. */
  chord: number;
  /** Blanks drawn at large, from a seed. */
  drawn: number;
  seed: number;
}

/** `progress` hears of the share done. */
export function marksOver(
  question: MarksQuestion,
  directions: readonly Float64Array[],
  options: MarksOverOptions,
  progress: (share: number) => void,
): MarksOver {
  let done = 0;
  const all = 2 * directions.length + options.drawn;
  const { request, proposedFromTipM, posterior } = question;
  const place: Place = ({ stiffness, massPerLength = [], restCurvature }, search) => {
    const rod = freeRod({ stiffness, massPerLength, restCurvature }, request.rod.lengthM);
    const placed = placeAnew({ ...request, rod, start: { fromTipM: proposedFromTipM } }, search);
    progress(++done / all);
    return placed;
  };
  const slopes = directions.map((direction) =>
    slopesAlong(posterior, direction, options.chord, proposedFromTipM, place),
  );
  const { squares, beyond, costs } = atLarge(question, directions, slopes, options, place);
  const blanks = costs.length;
  const variance = beyond.map((square, mark) =>
    slopes.reduce((sum, slope) => sum + slope[mark] ** 2, square / Math.max(1, blanks)),
  );
  const plusMinusM = squares.map((square) => reachOf95(blanks) * Math.sqrt(square / blanks));
  const expectedCost = costs.reduce((sum, cost) => sum + cost, 0) / blanks;
  const costOfKeeping = quantile(costs, 0.95);
  const spread = { blanks, tried: options.drawn, plusMinusM, costOfKeeping, expectedCost };
  return { slopes, variance, spread };
}

type Place = (blank: Rod, search: PlaceSearch) => PlacedAnew | undefined;

/** Where one end finds no bend the other one's chord counts; where neither does, nothing is known: 0. */
function slopesAlong(
  posterior: Posterior,
  direction: Float64Array,
  chord: number,
  proposedFromTipM: readonly number[],
  place: Place,
): number[] {
  const ends = [-chord, chord].map((by) =>
    place(
      rodAt(
        posterior,
        direction.map((value) => by * value),
      ),
      'near',
    ),
  );
  const length = chord * ends.filter((end) => end !== undefined).length;
  const [low, high] = ends.map((end) => end?.fromTipM ?? proposedFromTipM);
  return high.map((at, mark) => (length > 0 ? (at - low[mark]) / length : 0));
}

/** Squares, summed, of how far each mark moved and of what the slopes do not say of it; costs ascending. */
function atLarge(
  { posterior, proposedFromTipM }: MarksQuestion,
  directions: readonly Float64Array[],
  slopes: readonly number[][],
  { drawn, seed }: MarksOverOptions,
  place: Place,
): { squares: number[]; beyond: number[]; costs: number[] } {
  const squares = new Array<number>(proposedFromTipM.length).fill(0);
  const beyond = new Array<number>(proposedFromTipM.length).fill(0);
  const costs: number[] = [];
  for (const state of drawStates(posterior.drawing, drawn, seed, sameScale)) {
    const placed = place(rodOf(posterior, state), 'near');
    if (!placed) continue;
    costs.push(Math.max(0, placed.keptWorst / placed.worst - 1));
    const spread = spreadAt(posterior, state);
    const along = directions.map((direction) => dot(direction, spread));
    placed.fromTipM.forEach((at, mark) => {
      const moved = at - proposedFromTipM[mark];
      const told = along.reduce((sum, by, k) => sum + by * slopes[k][mark], 0);
      squares[mark] += moved ** 2;
      beyond[mark] += (moved - told) ** 2;
    });
  }
  return { squares, beyond, costs: costs.sort((a, b) => a - b) };
}
