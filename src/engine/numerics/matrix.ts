/** Small dense matrices, row by row. */
export interface Matrix {
  readonly rows: number;
  readonly columns: number;
  readonly values: Float64Array;
}

/** A B. */
export function product(a: Matrix, b: Matrix): Matrix {
  const values = new Float64Array(a.rows * b.columns);
  for (let i = 0; i < a.rows; i++) {
    for (let k = 0; k < a.columns; k++) {
      const factor = a.values[i * a.columns + k];
      if (factor === 0) continue;
      for (let j = 0; j < b.columns; j++) values[i * b.columns + j] += factor * b.values[k * b.columns + j];
    }
  }
  return { rows: a.rows, columns: b.columns, values };
}

/** A Bᵀ. */
export function productTransposed(a: Matrix, b: Matrix): Matrix {
  const values = new Float64Array(a.rows * b.rows);
  for (let i = 0; i < a.rows; i++) {
    for (let j = 0; j < b.rows; j++) {
      let sum = 0;
      for (let k = 0; k < a.columns; k++) sum += a.values[i * a.columns + k] * b.values[j * b.columns + k];
      values[i * b.rows + j] = sum;
    }
  }
  return { rows: a.rows, columns: b.rows, values };
}

/** A x. */
export function times(a: Matrix, x: Float64Array): Float64Array {
  return Float64Array.from({ length: a.rows }, (_, i) => {
    let sum = 0;
    for (let k = 0; k < a.columns; k++) sum += a.values[i * a.columns + k] * x[k];
    return sum;
  });
}

/** Several of the same width, one below the other. */
export function stacked(parts: readonly Matrix[]): Matrix {
  const values = new Float64Array(parts.reduce((sum, part) => sum + part.values.length, 0));
  let at = 0;
  for (const part of parts) {
    values.set(part.values, at);
    at += part.values.length;
  }
  const rows = parts.reduce((sum, part) => sum + part.rows, 0);
  return { rows, columns: parts[0]?.columns ?? 0, values };
}
