import { pairAround } from '../numerics/pair-around.ts';
/**
 * Where the unknowns stand along the blank. Stiffness has 81 rows, twice as close at the tip as the mean, for
 * it changes fastest there; mass and natural curvature, which are smoother, have 21.
 */
export interface Rows {
  /** Ascending, 0 at the tip to `lengthM`. */
  readonly fine: Float64Array;
  readonly coarse: Float64Array;
}

export function rowsOf(lengthM: number): Rows {
  return { fine: gradedRows(lengthM, 81), coarse: gradedRows(lengthM, 21) };
}

function gradedRows(lengthM: number, count: number): Float64Array {
  return Float64Array.from({ length: count }, (_, i) => {
    const u = i / (count - 1);
    return lengthM * (0.5 * u + 0.5 * u * u);
  });
}

/** A place as a weighted mean of rows `row` and `row + 1`. */
export interface PlaceInRows {
  row: number;
  /** Of row + 1. */
  weight: number;
}

export function placeInRows(rows: Float64Array, at: number): PlaceInRows {
  const row = pairAround(rows, at);
  return {
    row,
    weight: Math.min(1, Math.max(0, (at - rows[row]) / (rows[row + 1] - rows[row]))),
  };
}

/** Adds to the derivatives of a place's two rows, by their weights. */
export function addBlend(
  jacobian: Float64Array,
  start: number,
  { row, weight }: PlaceInRows,
  by: number,
): void {
  jacobian[start + row] += (1 - weight) * by;
  jacobian[start + row + 1] += weight * by;
}
