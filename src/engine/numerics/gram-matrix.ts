/**
 * BᵀB of rows of `n` numbers, lower triangle. Column by column, two and two together, so that every number that is read
 * counts twice; each entry is summed down the rows.
 */
export function gramMatrix(b: Float64Array, n: number): Float64Array {
  const { columns, rows } = columnsOf(b, n);
  const gram = new Float64Array(n * n);
  for (let i = 0; i < n; i += 2) {
    const p = i * rows;
    const q = p + rows;
    const isLast = i + 1 === n;
    for (let j = 0; j <= i; j += 2) {
      const r = j * rows;
      const s = r + rows;
      let pr = 0;
      let ps = 0;
      let qr = 0;
      let qs = 0;
      for (let d = 0; d < rows; d++) {
        const one = columns[p + d];
        const next = columns[q + d];
        const other = columns[r + d];
        const otherNext = columns[s + d];
        pr += one * other;
        ps += one * otherNext;
        qr += next * other;
        qs += next * otherNext;
      }
      gram[i * n + j] = pr;
      if (j < i) gram[i * n + j + 1] = ps;
      if (isLast) continue;
      gram[(i + 1) * n + j] = qr;
      gram[(i + 1) * n + j + 1] = qs;
    }
  }
  return gram;
}

/** Rows of nothing left out; and one column of nothing more, so that an odd last one has a neighbour. */
function columnsOf(b: Float64Array, n: number): { columns: Float64Array; rows: number } {
  const starts: number[] = [];
  for (let at = 0; at < b.length; at += n) {
    if (b.subarray(at, at + n).some((value) => value !== 0)) starts.push(at);
  }
  const rows = starts.length;
  const columns = new Float64Array((n + 1) * rows);
  starts.forEach((at, d) => {
    for (let i = 0; i < n; i++) columns[i * rows + d] = b[at + i];
  });
  return { columns, rows };
}
