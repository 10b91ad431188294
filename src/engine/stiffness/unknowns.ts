/**
 * The unknowns of a fit as one vector z = mean + L u, u independent standard normal: the prior. L is block
 * diagonal and lower triangular.
 */
import { factorCholesky } from '../numerics/cholesky.ts';

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
  /** Amplitudes of doubts that are carried along (see doubt.ts). */
  readonly extra: Block;
}

export interface GaussianPrior {
  mean: Float64Array;
  /** size × size. */
  covariance: Float64Array;
}

export type UnknownName = 'stiffness' | 'rest' | 'restAcross' | 'mass' | 'tilt' | 'extra';

export function unknownsOf(priors: Record<UnknownName, GaussianPrior>): Unknowns {
  const names: UnknownName[] = ['stiffness', 'rest', 'restAcross', 'mass', 'tilt', 'extra'];
  let start = 0;
  const blocks = names.map((name): Block => {
    const { mean, covariance } = priors[name];
    const block = { start, size: mean.length, factor: covariance.slice() };
    if (!factorCholesky(block.factor, block.size))
      throw new Error(`prior of ${name} is not positive definite`);
    start += block.size;
    return block;
  });
  const mean = new Float64Array(start);
  names.forEach((name, i) => {
    mean.set(priors[name].mean, blocks[i].start);
  });
  const [stiffness, rest, restAcross, mass, tilt, extra] = blocks;
  return { size: start, mean, blocks, stiffness, rest, restAcross, mass, tilt, extra };
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

/** One row of d/dz turned in place into the row of d/du = d/dz · L. */
export function rowByStandard({ blocks }: Unknowns, row: Float64Array): void {
  for (const { start, size, factor } of blocks) {
    for (let k = 0; k < size; k++) {
      let sum = 0;
      for (let i = k; i < size; i++) sum += row[start + i] * factor[i * size + k];
      row[start + k] = sum;
    }
  }
}
