import { pairAround } from './pair-around.ts';

/**
 * A function given by a table: linear between rows, constant outside, with the exact integrals of itself
 * and of its reciprocal. Rows ascend in x; one row is a constant.
 */
export interface PiecewiseLinear {
  readonly x: Float64Array;
  readonly y: Float64Array;
  /** ∫ y dx from x[0] to each row. */
  readonly integral: Float64Array;
}

/** Throws where the rows are empty, not ascending or not finite: callers check user input first. */
export function piecewiseLinear(x: ArrayLike<number>, y: ArrayLike<number>): PiecewiseLinear {
  if (x.length === 0 || x.length !== y.length) throw new Error(`table of ${x.length} x and ${y.length} y`);
  const integral = new Float64Array(x.length);
  for (let i = 1; i < x.length; i++) {
    const width = x[i] - x[i - 1];
    if (!(width > 0)) throw new Error(`table rows must ascend: x[${i}] = ${x[i]} after ${x[i - 1]}`);
    integral[i] = integral[i - 1] + 0.5 * (y[i] + y[i - 1]) * width;
  }
  return { x: Float64Array.from(x), y: Float64Array.from(y), integral };
}

/** Index of the row interval that holds `at`: -1 before the first row, n - 1 behind the last. */
function intervalOf(x: Float64Array, at: number): number {
  if (at < x[0]) return -1;
  return at >= x[x.length - 1] ? x.length - 1 : pairAround(x, at);
}

export function valueAt(table: PiecewiseLinear, at: number): number {
  return valueInside(table, intervalOf(table.x, at), at);
}

/** ∫ y dx from `from` to `to`. */
export function integralBetween(table: PiecewiseLinear, from: number, to: number): number {
  return integralTo(table, to) - integralTo(table, from);
}

function integralTo(table: PiecewiseLinear, at: number): number {
  return integralInside(table, intervalOf(table.x, at), at);
}

function integralInside({ x, y, integral }: PiecewiseLinear, i: number, at: number): number {
  if (i < 0) return (at - x[0]) * y[0];
  const reach = at - x[i];
  if (i >= x.length - 1) return integral[i] + reach * y[i];
  const slope = (y[i + 1] - y[i]) / (x[i + 1] - x[i]);
  return integral[i] + reach * (y[i] + 0.5 * slope * reach);
}

/** ∫ dx / y from `from` to `to` (from ≤ to), exact for the table; y must be positive. */
export function reciprocalIntegralBetween(table: PiecewiseLinear, from: number, to: number): number {
  const { x } = table;
  let sum = 0;
  let low = from;
  let i = intervalOf(x, from);
  while (low < to) {
    const rowEnd = i + 1 < x.length ? x[i + 1] : Number.POSITIVE_INFINITY;
    const high = Math.min(to, rowEnd);
    sum += reciprocalOfLine(high - low, valueInside(table, i, low), valueInside(table, i, high));
    low = high;
    i++;
  }
  return sum;
}

function valueInside({ x, y }: PiecewiseLinear, i: number, at: number): number {
  if (i < 0) return y[0];
  if (i >= x.length - 1) return y[x.length - 1];
  return y[i] + ((at - x[i]) / (x[i + 1] - x[i])) * (y[i + 1] - y[i]);
}

/** ∫ dx / y over `width` for y linear from a to b; the series keeps its digits where a ≈ b. */
function reciprocalOfLine(width: number, a: number, b: number): number {
  const middle = 0.5 * (a + b);
  const r = (b - a) / (2 * middle);
  if (Math.abs(r) < 0.05) {
    const r2 = r * r;
    return (width / middle) * (1 + r2 * (1 / 3 + r2 * (1 / 5 + r2 * (1 / 7 + r2 / 9))));
  }
  return (width * Math.log(b / a)) / (b - a);
}

/**
 * The same integrals over many neighbouring cells in one sweep: cell i lies between edges[i] and edges[i - 1],
 * edges descending; results[0] is left alone. Much quicker than cell by cell, where tables are long.
 */
export function integralsOverCells(table: PiecewiseLinear, edges: Float64Array, results: Float64Array): void {
  const { x } = table;
  let row = -1;
  let before = 0;
  for (let i = edges.length - 1; i >= 0; i--) {
    while (row + 1 < x.length && x[row + 1] <= edges[i]) row++;
    const upTo = integralInside(table, row, edges[i]);
    if (i + 1 < edges.length) results[i + 1] = upTo - before;
    before = upTo;
  }
}

export function reciprocalIntegralsOverCells(
  table: PiecewiseLinear,
  edges: Float64Array,
  results: Float64Array,
): void {
  const { x } = table;
  let row = -1;
  for (let i = edges.length - 1; i >= 1; i--) {
    let low = edges[i];
    const end = edges[i - 1];
    while (row + 1 < x.length && x[row + 1] <= low) row++;
    let lowValue = valueInside(table, row, low);
    let sum = 0;
    while (row + 1 < x.length && x[row + 1] < end) {
      const highValue = table.y[row + 1];
      sum += reciprocalOfLine(x[row + 1] - low, lowValue, highValue);
      row++;
      low = x[row];
      lowValue = highValue;
    }
    results[i] = sum + reciprocalOfLine(end - low, lowValue, valueInside(table, row, end));
  }
}

/** Values at many descending places in one sweep. */
export function valuesAtPlaces(table: PiecewiseLinear, places: Float64Array, results: Float64Array): void {
  const { x } = table;
  let row = -1;
  for (let i = places.length - 1; i >= 0; i--) {
    while (row + 1 < x.length && x[row + 1] <= places[i]) row++;
    results[i] = valueInside(table, row, places[i]);
  }
}
