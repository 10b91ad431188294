/**
 * Small deflections of a section turned by φ:
 *
 *   d_k(φ) = D_k (1 + x cos 2φ + y sin 2φ) + p cos φ + q sin φ      load k = a, b
 *
 * D_k the mean drop; (x, y) = c (cos 2φ_soft, sin 2φ_soft) the stiffness difference, which scales with the
 * load; (p, q) = B (cos φ_bow, sin φ_bow) the natural bow, which does not. Least squares over both loads
 * together by Gauss-Newton (the products D_k x make it slightly non-linear). The covariance is σ² (JᵀJ)⁻¹.
 */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';

export interface TurnReading {
  turnRad: number;
  /** Which load. */
  load: 0 | 1;
  dropM: number;
}

export interface Harmonics {
  converged: boolean;
  /** D_a, D_b, x, y, p, q. */
  parameters: Float64Array;
  /** Of the parameters, 6 × 6, for σ = 1 m. */
  covariance: Float64Array;
  /** Read minus fitted, m. */
  residuals: Float64Array;
  /** Share of each reading's own error that shows in its residual. */
  redundancy: Float64Array;
}

const count = 6;
export const mostSteps = 30;

/** Undefined where the turns do not tell the six apart. */
export function fitHarmonics(readings: readonly TurnReading[]): Harmonics | undefined {
  const parameters = new Float64Array(count);
  for (const load of [0, 1]) {
    const drops = readings.filter((reading) => reading.load === load).map(({ dropM }) => dropM);
    parameters[load] = drops.reduce((sum, d) => sum + d, 0) / Math.max(1, drops.length);
  }
  const largest = Math.max(Math.abs(parameters[0]), Math.abs(parameters[1]), 1e-9);
  let converged = false;
  for (let round = 0; round < mostSteps && !converged; round++) {
    const system = normalSystem(readings, parameters);
    if (!factorScaled(system)) return undefined;
    const step = solveScaled(system, system.right);
    converged = step.every((s, i) => Math.abs(s) < 1e-10 * (i === 2 || i === 3 ? 1 : largest));
    for (let i = 0; i < count; i++) parameters[i] += step[i];
  }
  return describe(readings, parameters, converged);
}

interface NormalSystem {
  matrix: Float64Array;
  right: Float64Array;
  scale: Float64Array;
}

function normalSystem(readings: readonly TurnReading[], parameters: Float64Array): NormalSystem {
  const matrix = new Float64Array(count * count);
  const right = new Float64Array(count);
  for (const reading of readings) {
    const row = derivatives(reading, parameters);
    const residual = reading.dropM - predicted(reading, parameters);
    for (let i = 0; i < count; i++) {
      right[i] += row[i] * residual;
      for (let j = 0; j < count; j++) matrix[i * count + j] += row[i] * row[j];
    }
  }
  const scale = new Float64Array(count).map((_, i) => 1 / Math.sqrt(matrix[i * count + i] || 1));
  return { matrix, right, scale };
}

/** Factors the matrix scaled to a unit diagonal; false where some parameters cannot be told apart. */
function factorScaled({ matrix, scale }: NormalSystem): boolean {
  for (let i = 0; i < count; i++) {
    for (let j = 0; j < count; j++) matrix[i * count + j] *= scale[i] * scale[j];
  }
  if (!factorCholesky(matrix, count)) return false;
  for (let i = 0; i < count; i++) if (matrix[i * count + i] < 1e-4) return false;
  return true;
}

function solveScaled({ matrix, scale }: NormalSystem, right: Float64Array): Float64Array {
  const x = right.map((value, i) => value * scale[i]);
  solveLower(matrix, count, x, x);
  solveUpper(matrix, count, x, x);
  return x.map((value, i) => value * scale[i]);
}

function predicted({ turnRad, load }: TurnReading, [a, b, x, y, p, q]: Float64Array): number {
  const mean = load === 0 ? a : b;
  const twice = 1 + x * Math.cos(2 * turnRad) + y * Math.sin(2 * turnRad);
  return mean * twice + p * Math.cos(turnRad) + q * Math.sin(turnRad);
}

function derivatives({ turnRad, load }: TurnReading, [a, b, x, y]: Float64Array): number[] {
  const cos2 = Math.cos(2 * turnRad);
  const sin2 = Math.sin(2 * turnRad);
  const mean = load === 0 ? a : b;
  const byMean = 1 + x * cos2 + y * sin2;
  return [
    load === 0 ? byMean : 0,
    load === 1 ? byMean : 0,
    mean * cos2,
    mean * sin2,
    Math.cos(turnRad),
    Math.sin(turnRad),
  ];
}

function describe(
  readings: readonly TurnReading[],
  parameters: Float64Array,
  converged: boolean,
): Harmonics | undefined {
  const system = normalSystem(readings, parameters);
  if (!factorScaled(system)) return undefined;
  const covariance = new Float64Array(count * count);
  for (let j = 0; j < count; j++) {
    const unit = new Float64Array(count);
    unit[j] = 1;
    covariance.set(solveScaled(system, unit), j * count);
  }
  const residuals = Float64Array.from(readings, (reading) => reading.dropM - predicted(reading, parameters));
  const redundancy = Float64Array.from(readings, (reading) => {
    const row = derivatives(reading, parameters);
    let seen = 0;
    for (let i = 0; i < count; i++) {
      for (let j = 0; j < count; j++) seen += row[i] * covariance[i * count + j] * row[j];
    }
    return Math.max(0, 1 - seen);
  });
  return { converged, parameters, covariance, residuals, redundancy };
}
