/**
 * The blank's half-width along the strip, as a straight taper chosen by vote.
 *
 * A place votes for a half-width h by the best pair of opposite edges 2h apart near the centreline; a pair
 * counts for its weaker edge, so that a shelf's single edge or a soft shadow gathers little. The taper
 * h(u) = hButt + (hTip − hButt)·u/U with the largest sum of votes wins.
 * Assumption: between butt and tip the width falls about evenly (common practice for rod blanks, no source).
 */
import type { Strip } from './strip.ts';

export interface TaperChoice {
  /** Search this far off the centreline, but no further than `slackPx` beyond the half-width. */
  reachPx: number;
  slackPx: number;
  leastHalfPx: number;
  mostHalfPx: number;
  stepHalfPx: number;
  /** So much better must a taper that grows towards the tip fit. */
  swapFactor: number;
}

export interface Taper {
  /** Half-width at each row, pixels. */
  halfPx: Float64Array;
  /** Slope at which a pair of edges counts half, grey steps per pixel. */
  halfSlope: number;
}

export function taperVote(slope: Strip, choice: TaperChoice): Taper {
  const { rows } = slope;
  const cast = votesOf(slope, choice);
  const { halves, halfSlope } = cast;
  const forward = winnerOf(cast, (butt, tip) => tip <= butt);
  // Thicker towards the tip only on clear evidence: then butt and tip were tapped the wrong way round.
  const backward = winnerOf(cast, (butt, tip) => tip > butt);
  const winner = backward.sum > choice.swapFactor * forward.sum ? backward : forward;
  const halfPx = Float64Array.from(
    { length: rows },
    (_, u) => halves[winner.butt] + ((halves[winner.tip] - halves[winner.butt]) * u) / (rows - 1),
  );
  return { halfPx, halfSlope };
}

/** The half-width with the most votes in each of `windows` equal parts of the length, one for itself. */
export function halfWidthsAlong(slope: Strip, choice: TaperChoice, windows: number): number[] {
  const { halves, rows, votes } = votesOf(slope, choice);
  const sums = Array.from({ length: windows }, () => new Float64Array(halves.length));
  for (let v = 0; v < rows; v++) {
    const sum = sums[Math.floor((v * windows) / rows)];
    for (let k = 0; k < halves.length; k++) sum[k] += votes[v * halves.length + k];
  }
  return sums.map((sum) => halves[sum.indexOf(Math.max(...sum))]);
}

interface Votes {
  halves: number[];
  /** How many rows voted: every other one of the strip. */
  rows: number;
  /** Row by row, one for each half-width. */
  votes: Float32Array;
  halfSlope: number;
}

function votesOf(slope: Strip, choice: TaperChoice): Votes {
  const halves: number[] = [];
  for (let h = choice.leastHalfPx; h <= choice.mostHalfPx + 1e-9; h += choice.stepHalfPx) halves.push(h);
  const rows = Math.ceil(slope.rows / 2);
  const best = new Float32Array(rows * halves.length);
  for (let v = 0; v < rows; v++) {
    for (const [k, half] of halves.entries())
      best[v * halves.length + k] = bestPair(slope, 2 * v, half, choice);
  }
  const halfSlope = typicalBest(best, rows, halves.length);
  return { halves, rows, votes: best.map((value) => value / (value + halfSlope)), halfSlope };
}

/** The straight taper with the most votes among those allowed, as indices of half-widths. */
function winnerOf(
  { votes, rows, halves }: Votes,
  isAllowed: (butt: number, tip: number) => boolean,
): { butt: number; tip: number; sum: number } {
  const count = halves.length;
  let winner = { butt: 0, tip: 0, sum: -1 };
  for (let butt = 0; butt < count; butt++) {
    for (let tip = 0; tip < count; tip++) {
      if (!isAllowed(butt, tip)) continue;
      let sum = 0;
      for (let v = 0; v < rows; v++) {
        const k = Math.round(butt + ((tip - butt) * v) / (rows - 1));
        sum += votes[v * count + k];
      }
      if (sum > winner.sum) winner = { butt, tip, sum };
    }
  }
  return winner;
}

/** The weaker slope of the best pair of opposite edges 2·half apart, of either polarity. */
function bestPair(slope: Strip, u: number, half: number, choice: TaperChoice): number {
  const { columns, columnPx, middle, values } = slope;
  const gap = Math.max(1, Math.round((2 * half) / columnPx));
  const reach = Math.round(Math.min(choice.reachPx, half + choice.slackPx) / columnPx);
  const from = Math.max(0, middle - reach - (gap >> 1));
  const to = Math.min(columns - 1 - gap, middle + reach - (gap >> 1));
  let best = 0;
  for (let j = from; j <= to; j++) {
    const left = values[u * columns + j];
    const right = values[u * columns + j + gap];
    if (left * right >= 0) continue;
    const weaker = Math.min(Math.abs(left), Math.abs(right));
    if (weaker > best) best = weaker;
  }
  return best;
}

/** Half the median over the places of the best pair of any width. */
function typicalBest(best: Float32Array, rows: number, halves: number): number {
  const tops = new Float32Array(rows);
  for (let u = 0; u < rows; u++) {
    for (let k = 0; k < halves; k++) tops[u] = Math.max(tops[u], best[u * halves + k]);
  }
  return Math.max(0.3, tops.sort()[rows >> 1] / 2);
}
