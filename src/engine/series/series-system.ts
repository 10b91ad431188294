/** The blanks of a series as one linear system: what they share, how they differ, and how likely their readings are. */
import { factorCholesky, solveLower, solveUpper } from '../numerics/cholesky.ts';
import { type Matrix, product, productTransposed, stacked, times } from '../numerics/matrix.ts';
import { rowsOf } from '../stiffness/rows.ts';
import { differencesOf } from './differences.ts';
import type { SeriesMember } from './member.ts';

export interface System {
  members: readonly SeriesMember[];
  lengthM: number;
  /** All statements, one below the other; `start[b]` the first of member b. */
  design: Matrix;
  start: number[];
  /** y - T µ. */
  residual: Float64Array;
  believed: Float64Array;
  belief: Matrix;
  /** T S, T S Tᵀ, and per member T_b B Tᵀ_b of level and waves. */
  designBelief: Matrix;
  shared: Matrix;
  level: Matrix;
  waves: Matrix;
  levelBlocks: Matrix[];
  wavesBlocks: Matrix[];
}

export function systemOf(members: readonly SeriesMember[]): System {
  const n = members[0].believed.length;
  const lengthM = members.reduce((sum, member) => sum + member.lengthM, 0) / members.length;
  const believed = new Float64Array(n);
  for (const member of members)
    member.believed.forEach((value, i) => {
      believed[i] += value / members.length;
    });
  const { belief } = members[0];
  const design = stacked(members.map((member) => member.design));
  const start: number[] = [];
  let at = 0;
  for (const member of members) {
    start.push(at);
    at += member.design.rows;
  }
  const expected = times(design, believed);
  const observed = members.flatMap((member) => Array.from(member.observed));
  const { level, waves } = differencesOf(rowsOf(lengthM).fine);
  const designBelief = product(design, belief);
  const block = (between: Matrix) =>
    members.map((member) => productTransposed(product(member.design, between), member.design));
  return {
    members,
    lengthM,
    design,
    start,
    residual: expected.map((value, i) => observed[i] - value),
    believed,
    belief,
    designBelief,
    shared: productTransposed(designBelief, design),
    level,
    waves,
    levelBlocks: block(level),
    wavesBlocks: block(waves),
  };
}

export interface Factors {
  level: number;
  waves: number;
}

/** Cholesky factor of T (S + B) Tᵀ + I. */
function factorOf(system: System, { level, waves }: Factors): Float64Array {
  const n = system.residual.length;
  const matrix = system.shared.values.slice();
  system.members.forEach(({ design: { rows } }, b) => {
    const at = system.start[b];
    for (let i = 0; i < rows; i++) {
      for (let j = 0; j < rows; j++) {
        matrix[(at + i) * n + at + j] +=
          level ** 2 * system.levelBlocks[b].values[i * rows + j] +
          waves ** 2 * system.wavesBlocks[b].values[i * rows + j];
      }
      matrix[(at + i) * n + at + i] += 1;
    }
  });
  if (!factorCholesky(matrix, n))
    throw new Error('the readings of a series have no positive definite covariance');
  return matrix;
}

export function logEvidence(system: System, factors: Factors): number {
  const n = system.residual.length;
  const factor = factorOf(system, factors);
  const white = system.residual.slice();
  solveLower(factor, n, white, white);
  let sum = 0;
  for (let i = 0; i < n; i++) sum += 0.5 * white[i] ** 2 + Math.log(factor[i * n + i]);
  return -sum;
}

export interface Solved {
  factor: Float64Array;
  /** G⁻¹ (y - T µ). */
  weights: Float64Array;
  mean: Float64Array;
  covariance: Matrix;
}

export function solve(system: System, factors: Factors): Solved {
  const n = system.residual.length;
  const width = system.believed.length;
  const factor = factorOf(system, factors);
  const weights = system.residual.slice();
  solveLower(factor, n, weights, weights);
  solveUpper(factor, n, weights, weights);
  const mean = system.believed.slice();
  for (let d = 0; d < n; d++)
    for (let k = 0; k < width; k++) mean[k] += weights[d] * system.designBelief.values[d * width + k];
  // Cov m = S - (F⁻¹ T S)ᵀ (F⁻¹ T S), symmetric whatever the rounding.
  const white = system.designBelief.values.slice();
  const column = new Float64Array(n);
  for (let k = 0; k < width; k++) {
    for (let d = 0; d < n; d++) column[d] = white[d * width + k];
    solveLower(factor, n, column, column);
    for (let d = 0; d < n; d++) white[d * width + k] = column[d];
  }
  const covariance = system.belief.values.slice();
  for (let d = 0; d < n; d++)
    for (let i = 0; i < width; i++)
      for (let j = 0; j < width; j++)
        covariance[i * width + j] -= white[d * width + i] * white[d * width + j];
  return { factor, weights, mean, covariance: { rows: width, columns: width, values: covariance } };
}

export function differencesAt({ level, waves }: System, factors: Factors): Matrix {
  const values = level.values.map(
    (value, i) => factors.level ** 2 * value + factors.waves ** 2 * waves.values[i],
  );
  return { rows: level.rows, columns: level.columns, values };
}
