/**
 * Natural bow and stiffness difference of a section, from drops under two loads at several turns
 * (harmonics.ts), each with its uncertainty and whether it could be chance.
 *
 * A pair (two parts of one harmonic) is called significant where vᵀ C⁻¹ v exceeds 9.21, the 99 % point of χ²
 * with two degrees of freedom: one section in a hundred without bow would be called bowed.
 */
import type { Finding } from '../finding.ts';
import { checkRotation } from './check-rotation.ts';
import { fitHarmonics, type Harmonics, type TurnReading } from './harmonics.ts';
import type { RotationAnswer, RotationRequest } from './request.ts';

export function rotation(request: RotationRequest): RotationAnswer {
  const findings = checkRotation(request);
  if (findings.length > 0) return { status: 'refused', findings };
  const { kept, harmonics, odd } = withoutOddReadings(request);
  if (!harmonics) return { status: 'refused', findings: [...odd, cannotTell(request)] };
  const sigmaM = request.sigmaM * scatterFactor(kept, harmonics, request.sigmaM);
  const stiffness = pairOf(harmonics, 2, sigmaM);
  const bow = pairOf(harmonics, 4, sigmaM);
  const means = Math.abs(harmonics.parameters[1] - harmonics.parameters[0]);
  return {
    status: harmonics.converged ? 'converged' : 'not-converged',
    ...(harmonics.converged ? {} : { reason: 'the least squares did not settle in 30 steps' }),
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

/** Leaves out, one after the other, readings that are off by more than four standard deviations. */
function withoutOddReadings({ readings, sigmaM }: RotationRequest) {
  let kept: (TurnReading & { path: string })[] = readings.flatMap(({ turnRad, dropsM }, i) =>
    dropsM.map((dropM, load) => ({
      turnRad,
      dropM,
      load: load as 0 | 1,
      path: `readings[${i}].dropsM[${load}]`,
    })),
  );
  const odd: Finding[] = [];
  let harmonics = fitHarmonics(kept);
  while (harmonics && kept.length - 6 >= 3 && odd.length < 3) {
    const worst = worstReading(kept, harmonics, sigmaM);
    if (!worst) break;
    const { path, dropM } = kept[worst.index];
    odd.push({
      path,
      message: `the drop of ${(1000 * dropM).toFixed(2)} mm reads ${(1000 * Math.abs(worst.errorM)).toFixed(2)} mm ${worst.errorM > 0 ? 'more' : 'less'} than the other turns allow; it is left out. Read it again`,
    });
    kept = kept.filter((_, i) => i !== worst.index);
    harmonics = fitHarmonics(kept);
  }
  return { kept, harmonics, odd };
}

/** The scatter of all others decides, so that one gross error does not hide itself by widening it. */
function worstReading(kept: readonly TurnReading[], { residuals, redundancy }: Harmonics, sigmaM: number) {
  let index = -1;
  let largest = 0;
  residuals.forEach((r, i) => {
    const size = redundancy[i] > 0.05 ? (r * r) / redundancy[i] : 0;
    if (size > largest) {
      largest = size;
      index = i;
    }
  });
  if (index < 0) return undefined;
  const square = residuals.reduce((sum, r) => sum + r * r, 0);
  const freedom = kept.length - 6;
  const variance = Math.max(sigmaM ** 2, (square - largest + 4 * sigmaM ** 2) / (freedom - 1 + 4));
  if (largest < 16 * variance) return undefined;
  return { index, errorM: residuals[index] / redundancy[index] };
}

/** How much more the readings scatter than stated; never less, and few readings count little. */
function scatterFactor(kept: readonly TurnReading[], { residuals }: Harmonics, sigmaM: number): number {
  const square = residuals.reduce((sum, r) => sum + r * r, 0) / sigmaM ** 2;
  return Math.sqrt(Math.max(1, (square + 4) / (kept.length - 6 + 4)));
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
  return {
    path: 'readings',
    message: `the ${readings.length} turns do not tell bow from stiffness; spread them evenly, 0, 45, 90 and 135° at least`,
  };
}

function scatterFinding(sigmaM: number, statedM: number): Finding[] {
  if (sigmaM < 1.6 * statedM) return [];
  return [
    {
      path: 'sigmaM',
      message: `the readings scatter by ${(1000 * sigmaM).toFixed(2)} mm, not the stated ${(1000 * statedM).toFixed(2)} mm; the uncertainties are widened for it`,
    },
  ];
}

/** Turns on a part of the circle: a harmonic three times less certain than the same number spread evenly would leave it. */
function placingFindings({ readings }: RotationRequest, { covariance, parameters }: Harmonics): Finding[] {
  const n = readings.length;
  const square = parameters[0] ** 2 + parameters[1] ** 2;
  const evenStiffness = Math.sqrt(2 / (n * square));
  const evenBow = Math.sqrt(1 / n);
  const worst = (i: number) => Math.sqrt(Math.max(covariance[i * 7], covariance[(i + 1) * 7]));
  const findings: Finding[] = [];
  if (worst(2) > 3 * evenStiffness) findings.push(tooNarrow('the stiffness difference', 'half a turn'));
  if (worst(4) > 3 * evenBow) findings.push(tooNarrow('the bow', 'a whole turn'));
  return findings;
}

function tooNarrow(what: string, steps: string): Finding {
  return {
    path: 'readings',
    message: `the turns cover too little of the circle: ${what} is more than three times less certain than as many readings spread over ${steps} would leave it`,
  };
}

function smallDifferenceFinding(differenceM: number, sigmaM: number): Finding[] {
  if (differenceM > 10 * sigmaM) return [];
  return [
    {
      path: 'loadsKg',
      message: `the two loads differ by only ${(1000 * differenceM).toFixed(1)} mm of drop; take a heavier second one`,
    },
  ];
}

function wrap(angle: number, period: number): number {
  const inside = angle - period * Math.floor(angle / period);
  return inside >= period ? 0 : inside;
}

function rms(values: Float64Array): number {
  return Math.sqrt(values.reduce((sum, v) => sum + v * v, 0) / Math.max(1, values.length));
}
