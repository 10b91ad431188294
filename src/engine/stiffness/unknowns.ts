/**
 * The unknowns of a fit as one vector z = mean + L u, u independent standard normal: the prior. L is block
 * diagonal and lower triangular.
 */
import { factorCholesky, solveLower } from '../numerics/cholesky.ts';

export interface Block {
  readonly start: number;
  readonly size: number;
  /** size × size, lower triangle. */
  readonly factor: Float64Array;
}

export interface Unknowns {
  readonly size: number;
  readonly mean: Float64Array;
  readonly blocks: readonly Block[];
  /** ln(EI / 1 N·m²) at the fine rows. */
  readonly stiffness: Block;
  /** Natural curvature at the coarse rows, in the plane of turnedRad 0 and across it; size 0 where not asked. */
  readonly rest: Block;
  readonly restAcross: Block;
  /** ln(mass per length / 1 kg/m) at the coarse rows. */
  readonly mass: Block;
  /** One per set-up, rad. */
  readonly tilt: Block;
  /** Amplitudes of the smooth drifts of traced curves (curve-drift.ts). */
  readonly drift: Block;
  /** Amplitudes of doubts that are carried along (see doubts.ts). */
  readonly extra: Block;
}

export interface GaussianPrior {
  mean: Float64Array;
  /** size × size, lower triangle, of the covariance's Cholesky factor. */
  factor: Float64Array;
}

const names = ['stiffness', 'rest', 'restAcross', 'mass', 'tilt', 'drift', 'extra'] as const;
export type UnknownName = (typeof names)[number];

export function unknownsOf(priors: Record<UnknownName, GaussianPrior>): Unknowns {
  let start = 0;
  const blocks = names.map((name): Block => {
    const { mean, factor } = priors[name];
    const block = { start, size: mean.length, factor };
    start += block.size;
    return block;
  });
  const mean = new Float64Array(start);
  names.forEach((name, i) => {
    mean.set(priors[name].mean, blocks[i].start);
  });
  const [stiffness, rest, restAcross, mass, tilt, drift, extra] = blocks;
  return {
    size: start,
    mean,
    blocks,
    stiffness,
    rest,
    restAcross,
    mass,
    tilt,
    drift,
    extra,
  };
}

/** Takes `covariance` over. */
export function gaussianPrior(mean: Float64Array, covariance: Float64Array): GaussianPrior {
  if (!factorCholesky(covariance, mean.length))
    throw new Error('a prior covariance is not positive definite');
  return { mean, factor: covariance };
}

/** z = mean + L u. */
export function valuesOf({ mean, blocks }: Unknowns, u: Float64Array, z: Float64Array): void {
  for (const { start, size, factor } of blocks) {
    for (let i = 0; i < size; i++) {
      let sum = mean[start + i];
      for (let k = 0; k <= i; k++) sum += factor[i * size + k] * u[start + k];
      z[start + i] = sum;
    }
  }
}

/** u of z: the reverse of `valuesOf`. */
export function standardOf({ size: all, mean, blocks }: Unknowns, z: Float64Array): Float64Array {
  const u = new Float64Array(all);
  for (const { start, size, factor } of blocks) {
    const part = z.slice(start, start + size).map((value, i) => value - mean[start + i]);
    solveLower(factor, size, part, part);
    u.set(part, start);
  }
  return u;
}

/** One row of d/dz turned in place into the row of d/du = d/dz · L. */
export function rowByStandard({ blocks }: Unknowns, row: Float64Array): void {
  for (const { start, size, factor } of blocks) {
    // column k gathers from rows i ≥ k; going down the rows, row[start + i] is still unread when it is needed
    for (let i = 0; i < size; i++) {
      const value = row[start + i];
      const at = i * size;
      for (let k = 0; k < i; k++) row[start + k] += value * factor[at + k];
      row[start + i] = value * factor[at + i];
    }
  }
}
