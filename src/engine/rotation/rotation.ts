/**
 * Natural bow and stiffness difference of a section, from drops under two loads at several turns
 * (harmonics.ts), each with its uncertainty and whether it could be chance.
 *
 * A pair (two parts of one harmonic) is called significant where vᵀ C⁻¹ v exceeds 9.21, the 99 % point of χ²
 * with two degrees of freedom: one section in a hundred without bow would be called bowed.
 */

import type { Finding } from '../finding.ts';
import { checkRotation } from './check-rotation.ts';
import { type Harmonics, mostSteps } from './harmonics.ts';
import { settleReadings } from './odd-readings.ts';
import type { RotationAnswer, RotationRequest } from './request.ts';
import { rotationFound, rotationReason } from './rotation-kinds.ts';

export function rotation(request: RotationRequest): RotationAnswer {
  const findings = checkRotation(request);
  if (findings.length > 0) return { status: 'refused', findings };
  const { harmonics, odd, scatter } = settleReadings(request);
  if (!harmonics) return { status: 'refused', findings: [...odd, cannotTell(request)] };
  const sigmaM = request.sigmaM * scatter;
  const stiffness = pairOf(harmonics, 2, sigmaM);
  const bow = pairOf(harmonics, 4, sigmaM);
  const means = Math.abs(harmonics.parameters[1] - harmonics.parameters[0]);
  return {
    status: harmonics.converged ? 'converged' : 'not-converged',
    ...(harmonics.converged ? {} : { reason: rotationReason('rotation/unsettled', { steps: mostSteps }) }),
    bow: {
      amplitudeM: bow.size,
      directionRad: bow.angleRad,
      sigmaM: bow.sigma,
      directionSigmaRad: bow.angleSigmaRad,
    },
    stiffnessDifference: {
      fraction: 2 * stiffness.size,
      softRad: wrap(0.5 * stiffness.angleRad, Math.PI),
      sigma: 2 * stiffness.sigma,
      softSigmaRad: 0.5 * stiffness.angleSigmaRad,
    },
    significant: { bow: bow.chi2 > 9.21, stiffness: stiffness.chi2 > 9.21 },
    residualRmsM: rms(harmonics.residuals),
    findings: [
      ...odd,
      ...scatterFinding(sigmaM, request.sigmaM),
      ...placingFindings(request, harmonics),
      ...smallDifferenceFinding(means, sigmaM),
    ],
  };
}

/** Size and direction of the two parts at `first` and `first + 1`. */
function pairOf({ parameters, covariance }: Harmonics, first: number, sigmaM: number) {
  const at = (i: number, j: number) => covariance[(first + i) * 6 + first + j] * sigmaM ** 2;
  const [x, y] = [parameters[first], parameters[first + 1]];
  const size = Math.hypot(x, y);
  const [ux, uy] = size > 0 ? [x / size, y / size] : [1, 0];
  const along = ux * ux * at(0, 0) + 2 * ux * uy * at(0, 1) + uy * uy * at(1, 1);
  const across = uy * uy * at(0, 0) - 2 * ux * uy * at(0, 1) + ux * ux * at(1, 1);
  const determinant = at(0, 0) * at(1, 1) - at(0, 1) ** 2;
  const chi2 = (x * x * at(1, 1) - 2 * x * y * at(0, 1) + y * y * at(0, 0)) / determinant;
  return {
    size,
    angleRad: Math.atan2(y, x),
    sigma: Math.sqrt(along),
    // no direction is known better than the whole circle
    angleSigmaRad: Math.min(Math.PI, size > 0 ? Math.sqrt(across) / size : Math.PI),
    chi2,
  };
}

function cannotTell({ readings }: RotationRequest): Finding {
  return rotationFound('readings', 'rotation/turns-bunched', { turns: readings.length });
}

function scatterFinding(sigmaM: number, statedM: number): Finding[] {
  if (sigmaM < 1.6 * statedM) return [];
  return [rotationFound('sigmaM', 'rotation/scatter', { scatterM: sigmaM, statedM })];
}

/** Turns on a part of the circle: a harmonic three times less certain than the same number spread evenly would leave it. */
function placingFindings({ readings }: RotationRequest, { covariance, parameters }: Harmonics): Finding[] {
  const n = readings.length;
  const square = parameters[0] ** 2 + parameters[1] ** 2;
  const evenStiffness = Math.sqrt(2 / (n * square));
  const evenBow = Math.sqrt(1 / n);
  const worst = (i: number) => Math.sqrt(Math.max(covariance[i * 7], covariance[(i + 1) * 7]));
  const findings: Finding[] = [];
  if (worst(2) > 3 * evenStiffness) findings.push(tooNarrow('stiffness'));
  if (worst(4) > 3 * evenBow) findings.push(tooNarrow('bow'));
  return findings;
}

function tooNarrow(quantity: 'bow' | 'stiffness'): Finding {
  return rotationFound('readings', 'rotation/circle-uncovered', { quantity });
}

function smallDifferenceFinding(differenceM: number, sigmaM: number): Finding[] {
  if (differenceM > 10 * sigmaM) return [];
  return [rotationFound('loadsKg', 'rotation/loads-alike', { apartM: differenceM })];
}

function wrap(angle: number, period: number): number {
  const inside = angle - period * Math.floor(angle / period);
  return inside >= period ? 0 : inside;
}

function rms(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / Math.max(1, values.length));
}
