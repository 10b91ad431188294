/**
 * A measured blank as a series learns from it: its readings turned into the few independent statements about
 * ln EI that they make, each with a noise of 1.
 *
 * Whitened by the Cholesky factor of its covariance, A = L⁻¹ D, and turned into the eigenvectors of A S Aᵀ (S what
 * is believed of any blank); statements whose signal is less than a hundredth of the noise are dropped.
 */
import { factorCholesky, solveLower } from '../numerics/cholesky.ts';
import { type Matrix, product, productTransposed } from '../numerics/matrix.ts';
import { symmetricEigen } from '../numerics/symmetric-eigen.ts';
import { fitStiffness } from '../stiffness/fit.ts';
import type { StiffnessLikelihood } from '../stiffness/likelihood.ts';
import { commonRoughness, covarianceAt, stiffnessPrior } from '../stiffness/prior.ts';
import type { FitRequest, FitSetup, FitSolved } from '../stiffness/request.ts';
import { rowsOf } from '../stiffness/rows.ts';

export interface SeriesMember {
  id: string;
  name: string;
  lengthM: number;
  readings: number;
  /** Statements × 81. */
  design: Matrix;
  observed: Float64Array;
  /** Of the blank by itself: ln EI at the fine rows, believed before and found. */
  believed: Float64Array;
  /** Covariance of what is believed, 81 × 81. */
  belief: Matrix;
  alone: FitSolved;
}

/** Undefined where the bench has too little to be fitted. */
export function seriesMember(id: string, name: string, request: FitRequest): SeriesMember | undefined {
  const { answer, likelihood } = fitStiffness(request);
  if (answer.status !== 'converged' || !likelihood) return undefined;
  const prior = stiffnessPrior({ ...request.blank, series: undefined }, rowsOf(request.blank.lengthM));
  const belief = {
    rows: prior.mean.length,
    columns: prior.mean.length,
    values: covarianceAt(prior, commonRoughness),
  };
  const readings = request.setups.reduce((sum, setup) => sum + readingsOf(setup), 0);
  const said = statements(likelihood(), belief);
  return {
    id,
    name,
    lengthM: request.blank.lengthM,
    readings,
    ...said,
    believed: prior.mean,
    belief,
    alone: answer,
  };
}

/** What the builder wrote down: drops, sags, or one picture. */
export function readingsOf(setup: FitSetup): number {
  if (setup.kind === 'span' || setup.kind === 'curve') return setup.tests.length;
  return setup.tests.reduce((sum, { readings }) => sum + readings.length, 0);
}

/** Signal below this share of the noise says nothing. */
const leastSignal = 0.01;

export function statements(
  { count, design, observed, covariance }: StiffnessLikelihood,
  belief: Matrix,
): Pick<SeriesMember, 'design' | 'observed'> {
  const factor = covariance.slice();
  if (!factorCholesky(factor, count)) throw new Error('the noise of a bench is not positive definite');
  const width = belief.rows;
  const white: Matrix = { rows: count, columns: width, values: new Float64Array(count * width) };
  const column = new Float64Array(count);
  for (let k = 0; k < width; k++) {
    for (let i = 0; i < count; i++) column[i] = design[i * width + k];
    solveLower(factor, count, column, column);
    for (let i = 0; i < count; i++) white.values[i * width + k] = column[i];
  }
  const said = observed.slice();
  solveLower(factor, count, said, said);
  const signal = productTransposed(product(white, belief), white);
  const { values, vectors } = symmetricEigen(rowsOfMatrix(signal));
  const kept = vectors.filter((_, k) => values[k] > leastSignal);
  const turn: Matrix = { rows: kept.length, columns: count, values: Float64Array.from(kept.flat()) };
  return {
    design: product(turn, white),
    observed: Float64Array.from(kept, (vector) => vector.reduce((sum, value, i) => sum + value * said[i], 0)),
  };
}

function rowsOfMatrix({ rows, columns, values }: Matrix): number[][] {
  return Array.from({ length: rows }, (_, i) => Array.from(values.subarray(i * columns, (i + 1) * columns)));
}
