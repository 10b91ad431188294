/**
 * Whether a blank is one of its series: what its readings say against what the series foretells.
 *
 *   r = y - T E z,   C = T (Cov m + B) Tᵀ + I,   r ᵀC⁻¹ r ~ χ² with as many degrees as there are statements
 *
 * of the statements (member.ts) that the readings make well: signal above the noise. The others would only dilute
 * it. Quantiles of χ² by Wilson & Hilferty (1931).
 */
import { factorCholesky, solveLower } from '../numerics/cholesky.ts';
import { type Matrix, product, productTransposed, times } from '../numerics/matrix.ts';
import type { SeriesPrior } from '../stiffness/request.ts';
import type { SeriesMember } from './member.ts';

export interface Innovation {
  chiSquare: number;
  degrees: number;
  /** What 99 of 100 blanks of the series stay below. */
  limit: number;
  verdict: 'like' | 'doubtful' | 'unlike';
}

export function innovationOf(
  { mean, shared, between }: SeriesPrior,
  { design, observed, belief }: Pick<SeriesMember, 'design' | 'observed' | 'belief'>,
): Innovation {
  const clear = clearStatements(design, belief);
  const part: Matrix = {
    rows: clear.length,
    columns: design.columns,
    values: Float64Array.from(
      clear.flatMap((i) => Array.from(design.values.subarray(i * design.columns, (i + 1) * design.columns))),
    ),
  };
  const n = part.rows;
  const foretold = times(part, Float64Array.from(mean));
  const residual = Float64Array.from(clear, (i, k) => observed[i] - foretold[k]);
  const size = design.columns;
  const covariance: Matrix = {
    rows: size,
    columns: size,
    values: Float64Array.from(shared, (value, i) => value + between[i]),
  };
  const spread = productTransposed(product(part, covariance), part).values;
  for (let i = 0; i < n; i++) spread[i * n + i] += 1;
  if (!factorCholesky(spread, n))
    throw new Error('the innovation of a blank has no positive definite covariance');
  solveLower(spread, n, residual, residual);
  const chiSquare = residual.reduce((sum, value) => sum + value * value, 0);
  const limit = chiSquareQuantile(n, 2.326);
  const doubtful = chiSquareQuantile(n, 1.645);
  const verdict = chiSquare > limit ? 'unlike' : chiSquare > doubtful ? 'doubtful' : 'like';
  return { chiSquare, degrees: n, limit, verdict };
}

/** Statements stand in the order of their signal, the clearest first; the clearest one always counts. */
function clearStatements(design: Matrix, belief: Matrix): number[] {
  const signal = productTransposed(product(design, belief), design);
  const all = Array.from({ length: design.rows }, (_, i) => i);
  return all.filter((i) => i === 0 || signal.values[i * design.rows + i] > 1);
}

/** `z`: the standard normal quantile of the wanted share. */
export function chiSquareQuantile(degrees: number, z: number): number {
  const k = 2 / (9 * degrees);
  return degrees * (1 - k + z * Math.sqrt(k)) ** 3;
}
