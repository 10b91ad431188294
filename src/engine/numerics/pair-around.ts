/**
 * Index of the first of the two neighbouring rows that `at` lies between, by halving; before the first row and behind
 * the last one it is the end pair. Rows run one way, up or down.
 */
export function pairAround(rows: Float64Array, at: number): number {
  let low = 0;
  let high = rows.length - 1;
  const down = rows[low] > rows[high];
  while (high - low > 1) {
    const middle = (low + high) >> 1;
    if (down ? rows[middle] >= at : rows[middle] <= at) low = middle;
    else high = middle;
  }
  return low;
}
