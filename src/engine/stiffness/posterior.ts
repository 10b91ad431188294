/**
 * What the fit knows, as plain data, and rods drawn from it.
 *
 * u ~ N(û, A⁻¹), A = F Fᵀ; a draw is û + F⁻ᵀ ξ with ξ standard normal. Drops are nearly linear in the compliance
 * 1/EI = e^-z, and the mean of e^-z over z ~ N(ẑ, σ²) is e^(-ẑ + σ²/2): blanks drawn about ẑ itself would hang
 * lower than the readings on average, by σ²/2 of what they hang. ln EI is therefore drawn about ẑ + σ²/2, where the
 * mean compliance is the fitted one, and likewise ln µ about ẑ - σ²/2.
 */
import type { Rod } from '../bend/rod.ts';
import { solveUpper } from '../numerics/cholesky.ts';
import { seededNormal, seededRandom } from '../numerics/seeded-random.ts';
import type { MostProbable } from './most-probable.ts';
import type { FitRequest } from './request.ts';
import type { Rows } from './rows.ts';
import { type Unknowns, valuesOf } from './unknowns.ts';

export interface Posterior {
  lengthM: number;
  rows: Rows;
  unknowns: Unknowns;
  /** û and F (lower triangle, row by row). */
  u: Float64Array;
  factor: Float64Array;
}

export function posteriorOf(
  request: FitRequest,
  rows: Rows,
  unknowns: Unknowns,
  best: MostProbable,
): Posterior {
  return {
    lengthM: request.blank.lengthM,
    rows,
    unknowns,
    u: best.u,
    factor: best.factor,
  };
}

/** Rods that agree with the readings, as likely as each other; the same seed gives the same rods. */
export function samplePosterior({ posterior }: { posterior: Posterior }, count: number, seed: number): Rod[] {
  const normal = seededNormal(seededRandom(seed));
  const spread = new Float64Array(posterior.unknowns.size);
  const shift = meanShift(posterior);
  return Array.from({ length: count }, () => {
    for (let k = 0; k < spread.length; k++) spread[k] = normal();
    return rodAt(posterior, spread, shift);
  });
}

/** The rod at û + F⁻ᵀ ξ, its z moved by `shift` where given. */
export function rodAt(posterior: Posterior, spread: Float64Array, shift?: Float64Array): Rod {
  const { unknowns, u, factor } = posterior;
  const n = unknowns.size;
  const at = new Float64Array(n);
  solveUpper(factor, n, spread, at);
  for (let k = 0; k < n; k++) at[k] += u[k];
  const z = new Float64Array(n);
  valuesOf(unknowns, at, z);
  if (shift) for (let k = 0; k < n; k++) z[k] += shift[k];
  return rodOf(posterior, z);
}

/** What keeps the mean compliance and the mean mass of drawn blanks at the fitted ones. */
export function meanShift(posterior: Posterior): Float64Array {
  const { stiffness, mass } = posterior.unknowns;
  const sigma = standardDeviations(posterior);
  const shift = new Float64Array(sigma.length);
  for (let i = 0; i < stiffness.size; i++) shift[stiffness.start + i] = 0.5 * sigma[stiffness.start + i] ** 2;
  for (let i = 0; i < mass.size; i++) shift[mass.start + i] = -0.5 * sigma[mass.start + i] ** 2;
  return shift;
}

/** The rod of a state z. */
export function rodOf({ lengthM, rows, unknowns }: Posterior, z: Float64Array): Rod {
  const { stiffness, mass, rest } = unknowns;
  const coarse = Array.from(rows.coarse);
  return {
    lengthM,
    stiffness: Array.from(rows.fine, (fromTipM, i) => ({
      fromTipM,
      EINm2: Math.exp(z[stiffness.start + i]),
    })),
    massPerLength: coarse.map((fromTipM, i) => ({
      fromTipM,
      kgPerM: Math.exp(z[mass.start + i]),
    })),
    restCurvature: coarse.map((fromTipM, i) => ({
      fromTipM,
      perM: rest.size > 0 ? z[rest.start + i] : 0,
    })),
  };
}

/** Standard deviation of every unknown: √ of the diagonal of L A⁻¹ Lᵀ, from rows of F⁻¹ Lᵀ. */
export function standardDeviations({ unknowns, factor }: Posterior): Float64Array {
  const n = unknowns.size;
  const out = new Float64Array(n);
  const row = new Float64Array(n);
  for (const { start, size, factor: l } of unknowns.blocks) {
    for (let i = 0; i < size; i++) {
      row.fill(0);
      for (let k = 0; k <= i; k++) row[start + k] = l[i * size + k];
      out[start + i] = Math.sqrt(lengthSquaredAfterSolve(factor, n, row, start));
    }
  }
  return out;
}

function lengthSquaredAfterSolve(factor: Float64Array, n: number, row: Float64Array, first: number): number {
  let sum = 0;
  for (let i = first; i < n; i++) {
    let value = row[i];
    for (let k = first; k < i; k++) value -= factor[i * n + k] * row[k];
    row[i] = value / factor[i * n + i];
    sum += row[i] * row[i];
  }
  return sum;
}
