import type { ChainedBlocks } from '../../src/engine/numerics/chained-blocks.ts';

/** The chained blocks written out as a whole matrix. */
export function writtenHessian(system: ChainedBlocks): number[][] {
  const size = 3 * system.n;
  const matrix = Array.from({ length: size }, () => new Array<number>(size).fill(0));
  const put = (r: number, c: number, value: number) => {
    matrix[r][c] += value;
    if (r !== c) matrix[c][r] += value;
  };
  for (let i = 0; i < system.n; i++) {
    const d = system.diagonal.subarray(6 * i, 6 * i + 6);
    for (let k = 0; k < 3; k++) put(3 * i + k, 3 * i + k, d[k]);
    put(3 * i, 3 * i + 1, d[3]);
    put(3 * i, 3 * i + 2, d[4]);
    put(3 * i + 1, 3 * i + 2, d[5]);
    for (let k = 0; k < 9 && i > 0; k++) {
      put(3 * i + Math.floor(k / 3), 3 * i - 3 + (k % 3), system.off[9 * i + k]);
    }
  }
  for (let span = 0; span < system.spanCount; span++) {
    for (let column = 0; column < 2; column++) addSquare(matrix, system, span, column);
  }
  return matrix;
}

function addSquare(matrix: number[][], system: ChainedBlocks, span: number, column: number): void {
  const a = new Array<number>(matrix.length).fill(0);
  for (let i = system.last[span]; i >= Math.max(0, system.first[span]); i--) {
    const isEnd = i === system.first[span];
    const from = isEnd ? system.lowEnd.subarray(6 * span) : system.inner.subarray(6 * i);
    for (let k = 0; k < 3; k++) a[3 * i + k] = from[3 * column + k];
  }
  a.forEach((p, i) => {
    if (p === 0) return;
    a.forEach((q, j) => {
      matrix[i][j] += system.weight[span] * p * q;
    });
  });
}
