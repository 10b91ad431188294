/**
 * Natural frequencies of a clamped rod with its masses: the largest eigenvalues ω⁻² of the operator in
 * vibrating-rod.ts, by subspace iteration with Rayleigh-Ritz (Bathe & Wilson 1976, Numerical Methods in
 * Finite Element Analysis, ch. 12). Small oscillations about the straight rod; gravity and damping left out.
 */

import type { PointMass } from '../bend/mesh.ts';
import { type Rod, rodTables } from '../bend/rod.ts';
import { type Finding, inputFound, type Reason } from '../finding.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { frequencyFound, frequencyReason } from './frequency-kinds.ts';
import { applyRod, makeScratch, massProduct, type VibratingRod, vibratingRod } from './vibrating-rod.ts';

interface FrequencyRequest {
  rod: Rod;
  masses?: readonly PointMass[];
  /** How many frequencies, from the lowest: 1 to 20. */
  modes: number;
}
type FrequencyAnswer =
  | { status: 'converged'; hz: number[]; iterations: number; residual: number }
  | { status: 'not-converged'; reason: Reason; hz: number[]; iterations: number; residual: number }
  | { status: 'refused'; findings: Finding[] };

interface FrequencyOptions {
  /** Elements before table rows and masses add theirs. */
  resolution: number;
  maxIterations: number;
  /** Relative change of any wanted ω² between two iterations that counts as none. */
  tolerance: number;
  /** Frequencies whose ω⁻² is less than this share of the first one's drown in rounding. */
  smallestShare: number;
}
export const frequencyDefaults: FrequencyOptions = {
  resolution: 64,
  maxIterations: 300,
  tolerance: 1e-12,
  smallestShare: 1e-10,
};

/**
 * Clamped at `lengthM`. Zero mass per length is allowed where masses make the problem sound; a problem that is
 * not is refused with what to change. Throws only on tables that the door would refuse.
 */
export function frequency(
  request: FrequencyRequest,
  options: FrequencyOptions = frequencyDefaults,
): FrequencyAnswer {
  const rod = vibratingRod(rodTables(request.rod), request.masses ?? [], options.resolution);
  const findings = frequencyFindings(request, rod);
  if (findings.length > 0) return { status: 'refused', findings };
  return lowestModes(rod, request.modes, options);
}

function frequencyFindings({ modes }: FrequencyRequest, rod: VibratingRod): Finding[] {
  if (!Number.isInteger(modes) || modes < 1 || modes > 20) {
    return [inputFound('modes', 'input/out-of-range', { value: modes, low: 1, high: 20, whole: true })];
  }
  if (rod.movingParts === 0) {
    return [frequencyFound('rod.massPerLength', 'frequency/no-mass', {})];
  }
  if (rod.movingParts < modes) {
    return [frequencyFound('modes', 'frequency/few-masses', { modes, masses: rod.movingParts })];
  }
  return [];
}

function lowestModes(rod: VibratingRod, modes: number, options: FrequencyOptions): FrequencyAnswer {
  const block = startingBlock(rod, Math.min(rod.movingParts, modes + 6));
  const scratch = makeScratch(rod);
  let values: number[] = [];
  let residual = Number.POSITIVE_INFINITY;
  let iterations = 0;
  while (iterations < options.maxIterations && residual > options.tolerance) {
    iterations++;
    orthonormalise(rod, block);
    const deflected = block.map((y) => {
      const copy = Float64Array.from(y);
      applyRod(rod, copy, scratch);
      return copy;
    });
    const ritz = symmetricEigen(block.map((y) => deflected.map((z) => massProduct(rod, y, z))));
    residual = largestChange(values, ritz.values, modes);
    values = ritz.values;
    combine(deflected, ritz.vectors, block);
  }
  return answerOf(values.slice(0, modes), iterations, residual, options);
}

function answerOf(values: number[], iterations: number, residual: number, options: FrequencyOptions) {
  const sound = values.findIndex((value) => !(value > options.smallestShare * values[0]));
  const hz = (sound < 0 ? values : values.slice(0, sound)).map(
    (value) => 1 / (2 * Math.PI * Math.sqrt(value)),
  );
  if (sound >= 0) {
    const times = Math.round(options.smallestShare ** -0.5);
    const reason = frequencyReason('frequency/beyond-rounding', { mode: sound + 1, times, modes: sound });
    return { status: 'not-converged' as const, reason, hz, iterations, residual };
  }
  if (residual > options.tolerance) {
    const reason = frequencyReason('frequency/still-moving', { change: residual, steps: iterations });
    return { status: 'not-converged' as const, reason, hz, iterations, residual };
  }
  return { status: 'converged' as const, hz, iterations, residual };
}

/** Shapes that hold the clamp (s² near it) and wave ever more often towards the tip. */
function startingBlock(rod: VibratingRod, count: number): Float64Array[] {
  const length = rod.fromClampM[rod.fromClampM.length - 1];
  return Array.from({ length: count }, (_, k) =>
    Float64Array.from(rod.fromClampM, (at) => (at / length) ** 2 * Math.cos((k * Math.PI * at) / length)),
  );
}

/** Gram-Schmidt in the product of masses, twice over against rounding. */
function orthonormalise(rod: VibratingRod, block: Float64Array[]): void {
  for (let pass = 0; pass < 2; pass++) {
    for (let k = 0; k < block.length; k++) {
      for (let j = 0; j < k; j++) addScaled(block[k], -massProduct(rod, block[j], block[k]), block[j]);
      const norm = Math.sqrt(massProduct(rod, block[k], block[k]));
      const scale = norm > 0 ? 1 / norm : 0;
      for (let i = 0; i < block[k].length; i++) block[k][i] *= scale;
    }
  }
}

function addScaled(y: Float64Array, factor: number, z: Float64Array): void {
  for (let i = 0; i < y.length; i++) y[i] += factor * z[i];
}

/** block[k] ← Σ_j vectors[k][j] · from[j]. */
function combine(from: Float64Array[], vectors: number[][], block: Float64Array[]): void {
  for (let k = 0; k < block.length; k++) {
    block[k].fill(0);
    for (let j = 0; j < from.length; j++) addScaled(block[k], vectors[k][j], from[j]);
  }
}

function largestChange(before: number[], after: number[], modes: number): number {
  if (before.length === 0) return Number.POSITIVE_INFINITY;
  let largest = 0;
  for (let k = 0; k < modes; k++) largest = Math.max(largest, Math.abs(after[k] / before[k] - 1));
  return largest;
}
