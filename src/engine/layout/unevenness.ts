/**
 * How far a progression of intervals is from smooth: the sum of squared second differences of ln(interval),
 * the interval from the tip-top to guide 1 counted as the first. Zero for a geometric progression.
 */
import type { ShapeModel } from './trust-search.ts';

export function unevennessOf(fromTipM: readonly number[]): number {
  return differencesOf(fromTipM).reduce((sum, difference) => sum + difference.value ** 2, 0);
}

/** With gradient and Gauss-Newton Hessian by all stations. */
export function unevennessModel(fromTipM: readonly number[]): ShapeModel {
  const n = fromTipM.length;
  const model = { value: 0, gradient: new Float64Array(n), hessian: new Float64Array(n * n) };
  for (const { value, slopes } of differencesOf(fromTipM)) {
    model.value += value * value;
    for (const { guide, slope } of slopes) {
      model.gradient[guide] += 2 * value * slope;
      for (const other of slopes) model.hessian[guide * n + other.guide] += 2 * slope * other.slope;
    }
  }
  return model;
}

interface Difference {
  value: number;
  slopes: { guide: number; slope: number }[];
}

/** Second difference at each interval but the first and the last; interval i ends at guide i. */
function differencesOf(fromTipM: readonly number[]): Difference[] {
  const intervals = fromTipM.map((station, i) => station - (i > 0 ? fromTipM[i - 1] : 0));
  const logs = intervals.map(Math.log);
  const differences: Difference[] = [];
  for (let i = 1; i + 1 < fromTipM.length; i++) {
    const [before, here, after] = [1 / intervals[i - 1], 1 / intervals[i], 1 / intervals[i + 1]];
    const slopes = [
      { guide: i + 1, slope: after },
      { guide: i, slope: -after - 2 * here },
      { guide: i - 1, slope: 2 * here + before },
    ];
    if (i > 1) slopes.push({ guide: i - 2, slope: -before });
    differences.push({ value: logs[i + 1] - 2 * logs[i] + logs[i - 1], slopes });
  }
  return differences;
}
