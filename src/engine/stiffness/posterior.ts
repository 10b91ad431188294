/**
 * What the fit knows, as plain data, and rods drawn from it.
 *
 * About its answer u ~ N(û, A⁻¹), A = F Fᵀ, which is what tells readings apart that are still to be taken. Drawn blanks
 * come from the mixture of all kinds that the readings leave (mixture.ts), of which that is only the likeliest.
 */
import type { Rod } from '../bend/rod.ts';
import { solveUpper } from '../numerics/cholesky.ts';
import { type Drawing, drawStates, type ScaleOf } from './draw-states.ts';
import type { MostProbable } from './most-probable.ts';
import type { FitRequest } from './request.ts';
import type { Rows } from './rows.ts';
import { standardOf, type Unknowns, valuesOf } from './unknowns.ts';

export interface Posterior {
  lengthM: number;
  rows: Rows;
  unknowns: Unknowns;
  /** û and F (lower triangle, row by row). */
  u: Float64Array;
  factor: Float64Array;
  drawing: Drawing;
}

export function posteriorOf(
  request: FitRequest,
  rows: Rows,
  best: Pick<MostProbable, 'u' | 'factor'>,
  drawing: Drawing,
): Posterior {
  const { unknowns } = drawing.problem;
  return { lengthM: request.blank.lengthM, rows, unknowns, u: best.u, factor: best.factor, drawing };
}

/** Rods that agree with the readings, as likely as each other; the same seed gives the same rods. */
export function samplePosterior(
  { posterior }: { posterior: Posterior },
  count: number,
  seed: number,
  scaleOf?: ScaleOf,
): Rod[] {
  return drawStates(posterior.drawing, count, seed, scaleOf).map((z) => rodOf(posterior, z));
}

/** The rod at û + F⁻ᵀ ξ. */
export function rodAt(posterior: Posterior, spread: Float64Array): Rod {
  const { unknowns, u, factor } = posterior;
  const n = unknowns.size;
  const at = new Float64Array(n);
  solveUpper(factor, n, spread, at);
  for (let k = 0; k < n; k++) at[k] += u[k];
  const z = new Float64Array(n);
  valuesOf(unknowns, at, z);
  return rodOf(posterior, z);
}

/** ξ of a state: the reverse of `rodAt`. */
export function spreadAt({ unknowns, u, factor }: Posterior, z: Float64Array): Float64Array {
  const n = unknowns.size;
  const off = standardOf(unknowns, z).map((value, k) => value - u[k]);
  return off.map((_, k) => {
    let sum = 0;
    for (let i = k; i < n; i++) sum += factor[i * n + k] * off[i];
    return sum;
  });
}

/** The rod of a state z. */
export function rodOf(
  { lengthM, rows, unknowns }: Pick<Posterior, 'lengthM' | 'rows' | 'unknowns'>,
  z: Float64Array,
): Rod {
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
