/**
 * Whether the blank swung while the picture was taken. A blank gets thinner toward its tip; one that moves is smeared over
 * the more of the wall the nearer the tip. Its width in each twentieth of the way, from the middle grey across it over the
 * rows there: (Σp)²/Σp², the width of a box of even contrast p. The taper of the butt's half, carried on to the tip, and
 * what lens and pixels leave of the thinnest blank, are what a still one shows.
 */
import { medianOf } from '../../engine/numerics/median.ts';
import type { Pixels } from '../pixels.ts';
import type { RefinedCentreline } from './refine-centreline.ts';
import { type Strip, stripAlong } from './strip.ts';

export interface TipBlurChoice {
  windows: number;
  /** Windows from butt to tip: the taper is read in `taper`, the tip in `tip`, which is wider in all of them. */
  taper: readonly [number, number];
  tip: readonly [number, number];
  columnPx: number;
  /** Beside the blank from `beside` on to `reach` is wall. */
  besidePx: number;
  reachPx: number;
  /** Of the peak: where the blank's contrast ends; less than `leastGrey` is no blank. */
  footShare: number;
  leastGrey: number;
  /** A line of no width looks so wide. */
  leastPx: number;
}

/** Judgement, from painted pictures of seeds 40000 to 40011. */
export const tipBlurChoice: TipBlurChoice = {
  windows: 20,
  taper: [2, 9],
  tip: [16, 20],
  columnPx: 0.5,
  besidePx: 14,
  reachPx: 20,
  footShare: 0.25,
  leastGrey: 2,
  leastPx: 3.3,
};

/** By how much the tip looks wider than a still one, pixels; 0 where too little of the blank was seen. */
export function tipBlurPx(
  pixels: Pixels,
  { line }: Pick<RefinedCentreline, 'line'>,
  choice = tipBlurChoice,
): number {
  const strip = stripAlong(pixels, line, choice.reachPx, choice.columnPx);
  const widths = Array.from({ length: choice.windows }, (_, window) => widthIn(strip, window, choice));
  const seen = ([from, to]: readonly [number, number]) =>
    widths.flatMap((width, at) => (at >= from && at < to && width !== undefined ? [{ at, width }] : []));
  const [taper, tip] = [seen(choice.taper), seen(choice.tip)];
  if (taper.length < 4 || tip.length < 3) return 0;
  const slope = medianOf(
    taper.flatMap((a, i) => taper.slice(0, i).map((b) => (a.width - b.width) / (a.at - b.at))),
  );
  const start = medianOf(taper.map(({ at, width }) => width - slope * at));
  const over = tip.map(({ at, width }) => width - Math.max(choice.leastPx, start + slope * at));
  return Math.max(0, Math.min(...over));
}

function widthIn(strip: Strip, window: number, choice: TipBlurChoice): number | undefined {
  const { columns, columnPx } = strip;
  const profile = contrastAcross(strip, window, choice);
  const middle = (columns - 1) / 2;
  const sign = Math.sign(profile[middle]) || 1;
  const contrast = profile.map((value) => sign * value);
  const near = Math.round(3 / columnPx);
  let peak = middle;
  for (let j = middle - near; j <= middle + near; j++) if (contrast[j] > contrast[peak]) peak = j;
  const foot = choice.footShare * contrast[peak];
  if (contrast[peak] < choice.leastGrey) return undefined;
  let [sum, square] = [0, 0];
  const add = (j: number) => {
    sum += contrast[j];
    square += contrast[j] ** 2;
  };
  for (let j = peak; j >= 0 && contrast[j] > foot; j--) add(j);
  for (let j = peak + 1; j < columns && contrast[j] > foot; j++) add(j);
  return (columnPx * sum * sum) / square;
}

/** Grey over the wall's on both sides: the middle of the window's rows, so that what crosses the blank drops out. */
function contrastAcross(
  { rows, columns, columnPx, middle, values }: Strip,
  window: number,
  { windows, besidePx, reachPx }: TipBlurChoice,
): Float64Array {
  const first = Math.floor((window * rows) / windows);
  const beyond = Math.floor(((window + 1) * rows) / windows);
  const [near, far] = [Math.round(besidePx / columnPx), Math.round(reachPx / columnPx)];
  const sides = Array.from({ length: beyond - first }, (_, i) => {
    const at = (first + i) * columns + middle;
    let [left, right] = [0, 0];
    for (let k = near; k <= far; k++) {
      left += values[at - k];
      right += values[at + k];
    }
    const count = far - near + 1;
    return { mean: (left + right) / (2 * count), slope: (right - left) / (count * (near + far)) };
  });
  return Float64Array.from({ length: columns }, (_, j) =>
    medianOf(
      sides.map(({ mean, slope }, i) => values[(first + i) * columns + j] - mean - slope * (j - middle)),
    ),
  );
}
