/** Adds the smooth drifts of a traced curve to its predicted readings; the traced length answers to them alone. */
import type { Prediction } from './clamp-derivatives.ts';
import type { PreparedCurve } from './prepared-request.ts';
import type { Unknowns } from './unknowns.ts';

/** The readings stand from row `first` on, the traced length after them. */
export function addDrifts(
  { drifts }: PreparedCurve,
  { drift }: Unknowns,
  z: Float64Array,
  first: number,
  out: Prediction,
): void {
  const lengthRow = first + drifts[0].pattern.length - 1;
  out.value[lengthRow] = 0;
  out.stationSlope[lengthRow] = 0;
  out.loadSlope[lengthRow] = 0;
  for (const { column: own, pattern } of drifts) {
    const column = drift.start + own;
    pattern.forEach((amount, i) => {
      out.value[first + i] += amount * z[column];
      out.jacobian[(first + i) * out.size + column] += amount;
    });
  }
}
