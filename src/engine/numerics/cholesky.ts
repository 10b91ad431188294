/**
 * Dense symmetric positive definite systems A x = b by A = L Lᵀ. Matrices are n × n, row by row; only the
 * lower triangle is read or written.
 */

/** Overwrites the lower triangle of `a` by L; false, with `a` spoilt, where A is not positive definite. */
export function factorCholesky(a: Float64Array, n: number): boolean {
  for (let i = 0; i < n; i++) {
    const row = i * n;
    for (let j = 0; j <= i; j++) {
      const other = j * n;
      let sum = a[row + j];
      for (let k = 0; k < j; k++) sum -= a[row + k] * a[other + k];
      if (i > j) a[row + j] = sum / a[other + j];
      else if (sum > 0) a[row + i] = Math.sqrt(sum);
      else return false;
    }
  }
  return true;
}

/** L x = b; `x` may be `b`. */
export function solveLower(l: Float64Array, n: number, b: Float64Array, x: Float64Array): void {
  for (let i = 0; i < n; i++) {
    let sum = b[i];
    for (let k = 0; k < i; k++) sum -= l[i * n + k] * x[k];
    x[i] = sum / l[i * n + i];
  }
}

/** Lᵀ x = b; `x` may be `b`. */
export function solveUpper(l: Float64Array, n: number, b: Float64Array, x: Float64Array): void {
  if (x !== b) x.set(b);
  for (let i = n - 1; i >= 0; i--) {
    x[i] /= l[i * n + i];
    for (let k = 0; k < i; k++) x[k] -= l[i * n + k] * x[i];
  }
}

/** ln det A of the factored A. */
export function logDeterminant(l: Float64Array, n: number): number {
  let sum = 0;
  for (let i = 0; i < n; i++) sum += Math.log(l[i * n + i]);
  return 2 * sum;
}
