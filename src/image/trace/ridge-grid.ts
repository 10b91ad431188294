/** Ridge points by cells of the picture, so that those near a place are found at once. */
import type { RidgePoints } from './ridge-points.ts';

interface GridInput {
  points: RidgePoints;
  /** Length of line behind each point's heading. */
  support: Float32Array;
  width: number;
  height: number;
  /** Points with less line behind their heading are left out. */
  costs: { leastSupportPx: number };
}

export interface RidgeGrid {
  cellPx: number;
  columns: number;
  rows: number;
  /** Points of cell c are order[first[c] .. first[c + 1]). */
  first: Int32Array;
  order: Int32Array;
}

/** Ridge points by cells, those with too little line behind them left out. */
export function ridgeGrid(input: GridInput): RidgeGrid {
  const cellPx = 6;
  const columns = Math.ceil(input.width / cellPx) + 1;
  const rows = Math.ceil(input.height / cellPx) + 1;
  const { points } = input;
  const cells = new Int32Array(points.count);
  const first = new Int32Array(columns * rows + 1);
  for (let i = 0; i < points.count; i++) {
    cells[i] = -1;
    if (input.support[i] < input.costs.leastSupportPx) continue;
    const column = Math.min(columns - 1, Math.max(0, Math.floor(points.x[i] / cellPx)));
    const row = Math.min(rows - 1, Math.max(0, Math.floor(points.y[i] / cellPx)));
    cells[i] = row * columns + column;
    first[cells[i] + 1]++;
  }
  for (let c = 0; c < columns * rows; c++) first[c + 1] += first[c];
  const fill = first.slice();
  const order = new Int32Array(first[columns * rows]);
  for (let i = 0; i < points.count; i++) if (cells[i] >= 0) order[fill[cells[i]]++] = i;
  return { cellPx, columns, rows, first, order };
}

export function pointsWithin(
  grid: RidgeGrid,
  x: number,
  y: number,
  reach: number,
  visit: (point: number) => void,
): void {
  const left = Math.max(0, Math.floor((x - reach) / grid.cellPx));
  const right = Math.min(grid.columns - 1, Math.floor((x + reach) / grid.cellPx));
  const top = Math.max(0, Math.floor((y - reach) / grid.cellPx));
  const bottom = Math.min(grid.rows - 1, Math.floor((y + reach) / grid.cellPx));
  for (let row = top; row <= bottom; row++) {
    for (let column = left; column <= right; column++) {
      const cell = row * grid.columns + column;
      for (let k = grid.first[cell]; k < grid.first[cell + 1]; k++) visit(grid.order[k]);
    }
  }
}
