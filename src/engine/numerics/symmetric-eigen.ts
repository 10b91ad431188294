/**
 * Eigenvalues and eigenvectors of a small symmetric matrix by cyclic Jacobi rotations: slow for large
 * matrices, the most accurate of the classical methods for small ones.
 * Source: Golub & Van Loan, Matrix Computations, 4th ed., section 8.5.
 */
interface SymmetricEigen {
  /** Largest first. */
  readonly values: number[];
  /** vectors[k] belongs to values[k]; orthonormal. */
  readonly vectors: number[][];
}

/** `matrix` holds its rows; only its symmetric part counts. It is not changed. */
export function symmetricEigen(matrix: readonly (readonly number[])[]): SymmetricEigen {
  const n = matrix.length;
  const a = matrix.map((row, i) => row.map((value, j) => 0.5 * (value + matrix[j][i])));
  const vectors = a.map((_, i) => a.map((_, j) => (i === j ? 1 : 0)));
  for (let sweep = 0; sweep < 60 && offDiagonal(a) > 0; sweep++) {
    for (let p = 0; p < n; p++) for (let q = p + 1; q < n; q++) rotate(a, vectors, p, q);
  }
  const order = a.map((_, i) => i).sort((i, j) => a[j][j] - a[i][i]);
  return { values: order.map((i) => a[i][i]), vectors: order.map((i) => vectors[i]) };
}

/** Sum of what is left beside the diagonal; entries too small to change their diagonal count as nothing. */
function offDiagonal(a: number[][]): number {
  let sum = 0;
  for (let p = 0; p < a.length; p++) {
    for (let q = p + 1; q < a.length; q++) {
      const small = 1e-18 * Math.sqrt(Math.abs(a[p][p] * a[q][q]));
      if (Math.abs(a[p][q]) > small) sum += Math.abs(a[p][q]);
    }
  }
  return sum;
}

/** Turns rows p and q so that a[p][q] vanishes; `vectors` keeps one eigenvector per row. */
function rotate(a: number[][], vectors: number[][], p: number, q: number): void {
  if (a[p][q] === 0) return;
  const tau = (a[q][q] - a[p][p]) / (2 * a[p][q]);
  const t = (tau >= 0 ? 1 : -1) / (Math.abs(tau) + Math.sqrt(1 + tau * tau));
  const c = 1 / Math.sqrt(1 + t * t);
  const s = t * c;
  for (let k = 0; k < a.length; k++) {
    const kp = a[k][p];
    const kq = a[k][q];
    a[k][p] = c * kp - s * kq;
    a[k][q] = s * kp + c * kq;
  }
  for (let k = 0; k < a.length; k++) {
    const pk = a[p][k];
    const qk = a[q][k];
    a[p][k] = c * pk - s * qk;
    a[q][k] = s * pk + c * qk;
    const vp = vectors[p][k];
    const vq = vectors[q][k];
    vectors[p][k] = c * vp - s * vq;
    vectors[q][k] = s * vp + c * vq;
  }
}
