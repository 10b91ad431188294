import type { Pixels } from '../pixels.ts';
import type { Centreline } from '../trace/centreline.ts';
import { stripAlong } from '../trace/strip.ts';
import { tipSeen, tipSeenChoice } from './tip-seen.ts';

export interface TipNear {
  /** Index along the line of the first place. */
  first: number;
  /** Of a tip there; tip-seen.ts. */
  score: Float64Array;
  isSeen: boolean;
  /** Whether the blank is still seen beyond this place. */
  goesOn(i: number): boolean;
}

/** What the picture says of a tip at each place about `atM` along the line. */
export function tipNear(
  pixels: Pixels,
  line: Centreline,
  along: Float64Array,
  { atM, reachM, factor }: { atM: number; reachM: number; factor: number },
): TipNear {
  const [before, after] = [Math.round(34 * factor), Math.round(20 * factor)];
  const index = (m: number) => along.findIndex((one) => one >= m);
  const first = Math.max(before, index(atM - reachM));
  const beyond = index(atM + reachM);
  const last = Math.max(first, Math.min(along.length - 1 - after, beyond < 0 ? along.length : beyond));
  const [from, to] = [first - before, Math.min(along.length, last + after + 1)];
  const part = { stepPx: line.stepPx, x: line.x.slice(from, to), y: line.y.slice(from, to) };
  // as wide as tip-seen.ts looks beside a line that goes on aside of this one
  const strip = stripAlong(pixels, part, 10 * factor, 0.5);
  // what hangs from a tip that points down lies on the line, and is fainter than the blank
  const isSteep = Math.abs(line.x[last] - line.x[first]) < 0.5 * Math.abs(line.y[last] - line.y[first]);
  const { seenShare } = tipSeenChoice;
  const seen = tipSeen(strip, before, factor, {
    ...tipSeenChoice,
    ...(isSteep ? { noneShare: seenShare } : {}),
  });
  const score = new Float64Array(last - first + 1);
  let sum = 0;
  for (let i = 0; seen && i < score.length; i++) {
    sum += seen.speaks[before + i];
    score[i] = (2 * sum) / factor;
  }
  const goesOn = (i: number) => seen?.goesOn(before + i) ?? false;
  return { first, score, isSeen: seen !== undefined, goesOn };
}

/** Standard deviation of places weighed by the exponential of their scores. */
export function spreadOf(places: Float64Array, scores: Float64Array): number {
  const top = Math.max(...scores);
  const weights = scores.map((score) => Math.exp(score - top));
  const sum = weights.reduce((total, weight) => total + weight, 0);
  const mean = weights.reduce((total, weight, i) => total + weight * places[i], 0) / sum;
  return Math.sqrt(weights.reduce((total, weight, i) => total + weight * (places[i] - mean) ** 2, 0) / sum);
}
