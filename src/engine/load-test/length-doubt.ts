/**
 * The traced length of a taped-up rod beside its length in the build. σ of the traced one: the taps on both ends, the
 * scale that the marks' measures give, and what marks and lens leave at the curve's edge, as the fit counts them
 * (stiffness/curve-drift.ts); 95 % is 1.96 σ. Judgement, no source.
 */
import { driftDefaults, tapSigmaM } from '../stiffness/curve-drift.ts';
import { arcFromTip, type PlanePoint } from '../stiffness/curve-places.ts';

export interface LengthDoubt {
  tracedM: number;
  rodM: number;
  /** Of the traced length, 95 %. */
  plusMinusM: number;
}

/** Undefined where both lengths agree within the ±: then every place on the curve is a place on the rod. */
export function lengthDoubt(
  points: readonly PlanePoint[],
  rodM: number,
  driftSigmaM: number = driftDefaults.driftSigmaM,
): LengthDoubt | undefined {
  const [tracedM] = arcFromTip(points);
  const plusMinusM = 1.96 * Math.hypot(tapSigmaM, driftDefaults.scaleSigma * rodM, driftSigmaM);
  return Math.abs(tracedM - rodM) > plusMinusM ? { tracedM, rodM, plusMinusM } : undefined;
}
