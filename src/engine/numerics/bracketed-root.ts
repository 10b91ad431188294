/**
 * Root of a continuous function between two places where its signs differ: regula falsi with the Illinois weight
 * (Dowell & Jarratt 1971, BIT 11:168-174), so that the bracket shrinks from both ends.
 */
export interface Tried {
  x: number;
  f: number;
}
interface RootOptions {
  /** Ends when the bracket is no wider than this, or |f| no larger than that. */
  toleranceX: number;
  toleranceF: number;
  maxEvaluations: number;
}
/** The last bracket; `low` is where the sign of f was that of the first argument's. */
export interface Bracket {
  low: Tried;
  high: Tried;
}

export function bracketedRoot(
  f: (x: number) => number,
  { low: first, high: last }: Bracket,
  options: RootOptions,
): Bracket {
  let low = first;
  let high = last;
  let weightLow = 1;
  let weightHigh = 1;
  for (let k = 0; k < options.maxEvaluations; k++) {
    if (Math.abs(high.x - low.x) <= options.toleranceX) break;
    const fLow = weightLow * low.f;
    const fHigh = weightHigh * high.f;
    const x = (low.x * fHigh - high.x * fLow) / (fHigh - fLow);
    const tried = { x, f: f(x) };
    if (Math.sign(tried.f) === Math.sign(first.f)) {
      low = tried;
      weightLow = 1;
      weightHigh *= 0.5;
    } else {
      high = tried;
      weightHigh = 1;
      weightLow *= 0.5;
    }
    if (Math.abs(tried.f) <= options.toleranceF) break;
  }
  return { low, high };
}
