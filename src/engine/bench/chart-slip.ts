/**
 * A mistyped mark in a list of guide stations.
 *
 * Charts follow a smooth progression (the arithmetic rule is a parabola in the guide's number). Each mark is
 * left out in turn and a parabola is laid through the others by least squares; the mark whose leaving-out makes
 * the others fit best is a slip if it then stands off by much more than they do, and by more than builders move
 * a guide to clear a ferrule.
 */
interface Slip {
  index: number;
  /** Where the progression of the others would put it. */
  likelyM: number;
}
interface SlipLimits {
  /** Common practice, no source: guides are moved 10 to 25 mm to clear a ferrule. */
  leastM: number;
  /** How many times the others' own unevenness a slip stands off. */
  timesOthers: number;
}
const slipDefaults: SlipLimits = { leastM: 0.03, timesOthers: 6 };

/** Up to two slips, worst first; lists of fewer than six marks say too little. */
export function findSlips(fromTipM: readonly number[], limits: SlipLimits = slipDefaults): Slip[] {
  const kept = fromTipM.map((_, index) => index);
  const slips: Slip[] = [];
  while (slips.length < 2 && kept.length >= 6) {
    const worst = worstMark(fromTipM, kept);
    if (worst.offM < Math.max(limits.leastM, limits.timesOthers * worst.othersM)) break;
    slips.push({ index: worst.index, likelyM: worst.likelyM });
    kept.splice(kept.indexOf(worst.index), 1);
  }
  return slips;
}

function worstMark(fromTipM: readonly number[], kept: readonly number[]) {
  const tried = kept.map((index) => {
    const others = kept.filter((other) => other !== index);
    const curve = parabolaThrough(others.map((other) => ({ x: other + 1, y: fromTipM[other] })));
    const rms = (rows: readonly number[]) =>
      Math.sqrt(rows.reduce((sum, row) => sum + (fromTipM[row] - curve(row + 1)) ** 2, 0) / rows.length);
    const likelyM = curve(index + 1);
    return { index, likelyM, offM: Math.abs(fromTipM[index] - likelyM), othersM: rms(others) };
  });
  return tried.reduce((best, one) => (one.othersM < best.othersM ? one : best));
}

/** Least-squares parabola, by orthogonal polynomials about the mean (no ill-conditioned normal equations). */
function parabolaThrough(points: readonly { x: number; y: number }[]): (x: number) => number {
  const mean = (value: (p: { x: number; y: number }) => number) =>
    points.reduce((sum, p) => sum + value(p), 0) / points.length;
  const middle = mean((p) => p.x);
  const spread = mean((p) => (p.x - middle) ** 2);
  const skew = mean((p) => (p.x - middle) ** 3) / spread;
  const second = (x: number) => (x - middle) ** 2 - skew * (x - middle) - spread;
  const level = mean((p) => p.y);
  const slope = mean((p) => p.y * (p.x - middle)) / spread;
  const bend = mean((p) => p.y * second(p.x)) / mean((p) => second(p.x) ** 2);
  return (x) => level + slope * (x - middle) + bend * second(x);
}
