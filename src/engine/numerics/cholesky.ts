/**
 * Dense symmetric positive definite systems A x = b by A = L Lᵀ. Matrices are n × n, row by row; only the
 * lower triangle is read or written.
 */

/** Overwrites the lower triangle of `a` by L; false, with `a` spoilt, where A is not positive definite. */
export function factorCholesky(a: Float64Array, n: number): boolean {
  for (let j = 0; j < n; j++) {
    const own = j * n;
    let square = a[own + j];
    for (let k = 0; k < j; k++) square -= a[own + k] * a[own + k];
    if (!(square > 0)) return false;
    const root = Math.sqrt(square);
    a[own + j] = root;
    // four rows at once: one alone would wait for each of its sums
    let i = j + 1;
    for (; i + 3 < n; i += 4) {
      const p = i * n;
      const q = p + n;
      const r = q + n;
      const s = r + n;
      let sumP = a[p + j];
      let sumQ = a[q + j];
      let sumR = a[r + j];
      let sumS = a[s + j];
      for (let k = 0; k < j; k++) {
        const value = a[own + k];
        sumP -= a[p + k] * value;
        sumQ -= a[q + k] * value;
        sumR -= a[r + k] * value;
        sumS -= a[s + k] * value;
      }
      a[p + j] = sumP / root;
      a[q + j] = sumQ / root;
      a[r + j] = sumR / root;
      a[s + j] = sumS / root;
    }
    for (; i < n; i++) {
      let sum = a[i * n + j];
      for (let k = 0; k < j; k++) sum -= a[i * n + k] * a[own + k];
      a[i * n + j] = sum / root;
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
