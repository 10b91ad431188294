import type { Posterior } from './posterior.ts';

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
