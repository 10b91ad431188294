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
}

export interface Taper {
  /** Half-width at each row, pixels. */
  halfPx: Float64Array;
  /** Slope at which a pair of edges counts half, grey steps per pixel. */
  halfSlope: number;
}

export function taperVote(slope: Strip, choice: TaperChoice): Taper {
  const halves: number[] = [];
  for (let h = choice.leastHalfPx; h <= choice.mostHalfPx + 1e-9; h += choice.stepHalfPx) halves.push(h);
  const { rows } = slope;
  const best = new Float32Array(rows * halves.length);
  for (let u = 0; u < rows; u++) {
    for (const [k, half] of halves.entries()) best[u * halves.length + k] = bestPair(slope, u, half, choice);
  }
  const halfSlope = typicalBest(best, rows, halves.length);
  const votes = best.map((value) => value / (value + halfSlope));
  let winner = { butt: 0, tip: 0, sum: -1 };
  for (let butt = 0; butt < halves.length; butt++) {
    for (let tip = 0; tip <= butt; tip++) {
      let sum = 0;
      for (let u = 0; u < rows; u += 2) {
        const k = Math.round(butt + ((tip - butt) * u) / (rows - 1));
        sum += votes[u * halves.length + k];
      }
      if (sum > winner.sum) winner = { butt, tip, sum };
    }
  }
  const halfPx = Float64Array.from(
    { length: rows },
    (_, u) => halves[winner.butt] + ((halves[winner.tip] - halves[winner.butt]) * u) / (rows - 1),
  );
  return { halfPx, halfSlope };
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
