/**
 * The readings of a turned section laid out over the angle, beside the two harmonics fitted to them:
 *
 *   difference  d_b − d_a ≈ (D_b − D_a)(1 + x cos 2φ + y sin 2φ)      stiffness, twice per turn
 *   bow         p cos φ + q sin φ                                     once per turn
 *
 * A reading's own bow is what is left of it, over both loads, when the stiffness part is taken away. Bands are
 * 95 %, ±1.96 √(gᵀ C g), g the derivative of the curve by the six parameters.
 */
import { checkRotation } from './check-rotation.ts';
import type { Harmonics } from './harmonics.ts';
import { settleReadings } from './odd-readings.ts';
import type { RotationRequest } from './request.ts';

export interface CurvePoint {
  turnRad: number;
  valueM: number;
  plusMinusM: number;
}
export interface TurnPoint {
  turnRad: number;
  bowM: number;
  differenceM: number;
  /** One of its two drops was left out as odd. */
  odd: boolean;
}
interface Unrolled {
  bow: CurvePoint[];
  difference: CurvePoint[];
  /** One per reading, in the request's order. */
  points: TurnPoint[];
  /** D_b − D_a. */
  meanDifferenceM: number;
}

/** Over one whole turn in steps of `stepRad`; undefined where the readings make no answer. */
export function unrolled(request: RotationRequest, stepRad: number = Math.PI / 36): Unrolled | undefined {
  if (checkRotation(request).length > 0) return undefined;
  const { harmonics, kept, scatter } = settleReadings(request);
  if (!harmonics) return undefined;
  const sigmaM = request.sigmaM * scatter;
  const turns = Array.from({ length: Math.round((2 * Math.PI) / stepRad) + 1 }, (_, k) => k * stepRad);
  const [meanA, meanB] = harmonics.parameters;
  return {
    bow: turns.map((turnRad) => curvePoint(harmonics, turnRad, bowAt, sigmaM)),
    difference: turns.map((turnRad) => curvePoint(harmonics, turnRad, differenceAt, sigmaM)),
    points: request.readings.map(({ turnRad, dropsM: [a, b] }, index) => ({
      turnRad,
      bowM: (a + b - (meanA + meanB) * twiceAt(harmonics, turnRad)) / 2,
      differenceM: b - a,
      odd: kept.filter((one) => one.index === index).length < 2,
    })),
    meanDifferenceM: meanB - meanA,
  };
}

type Curve = (harmonics: Harmonics, turnRad: number) => { valueM: number; gradient: number[] };

function curvePoint(harmonics: Harmonics, turnRad: number, curve: Curve, sigmaM: number): CurvePoint {
  const { valueM, gradient } = curve(harmonics, turnRad);
  let variance = 0;
  for (let i = 0; i < 6; i++) {
    for (let j = 0; j < 6; j++) variance += gradient[i] * harmonics.covariance[i * 6 + j] * gradient[j];
  }
  return { turnRad, valueM, plusMinusM: 1.96 * sigmaM * Math.sqrt(variance) };
}

function bowAt({ parameters }: Harmonics, turnRad: number) {
  const [cos, sin] = [Math.cos(turnRad), Math.sin(turnRad)];
  return { valueM: parameters[4] * cos + parameters[5] * sin, gradient: [0, 0, 0, 0, cos, sin] };
}

function differenceAt(harmonics: Harmonics, turnRad: number) {
  const mean = harmonics.parameters[1] - harmonics.parameters[0];
  const twice = twiceAt(harmonics, turnRad);
  const gradient = [-twice, twice, mean * Math.cos(2 * turnRad), mean * Math.sin(2 * turnRad), 0, 0];
  return { valueM: mean * twice, gradient };
}

function twiceAt({ parameters: [, , x, y] }: Harmonics, turnRad: number): number {
  return 1 + x * Math.cos(2 * turnRad) + y * Math.sin(2 * turnRad);
}
