import { line, type Mark, type Text, text } from './drawing.ts';

export interface Column {
  title: string;
  widthMm: number;
  align?: Text['align'];
}
export interface Table {
  columns: readonly Column[];
  /** One text per column; an empty text in a `fill` column is a box to write into. */
  rows: readonly (readonly string[])[];
  rowMm?: number;
  /** Height of its letters; 3 mm where nothing is said. */
  textMm?: number;
}
export const tableRowMm = 6;

/** A ruled table with its head, top left corner at the given place. */
export function drawTable(table: Table, leftMm: number, topMm: number): Mark[] {
  const rowMm = table.rowMm ?? tableRowMm;
  const widthMm = table.columns.reduce((sum, { widthMm: one }) => sum + one, 0);
  const rule = (row: number, heavy: boolean) =>
    line(leftMm, topMm + row * rowMm, leftMm + widthMm, topMm + row * rowMm, { widthMm: heavy ? 0.3 : 0.1 });
  const titles = table.columns.map(({ title }) => title);
  return [
    ...drawRow(table, titles, leftMm, topMm + rowMm, true),
    ...table.rows.flatMap((row, k) => drawRow(table, row, leftMm, topMm + (k + 2) * rowMm, false)),
    ...Array.from({ length: table.rows.length + 2 }, (_, k) =>
      rule(k, k <= 1 || k === table.rows.length + 1),
    ),
  ];
}

/** Room the table takes, head and all. */
export function tableHeightMm({ rows, rowMm = tableRowMm }: Pick<Table, 'rows' | 'rowMm'>): number {
  return (rows.length + 1) * rowMm;
}

function drawRow(
  { columns, textMm = 3 }: Pick<Table, 'columns' | 'textMm'>,
  cells: readonly string[],
  leftMm: number,
  bottomMm: number,
  bold: boolean,
): Mark[] {
  let x = leftMm;
  return columns.map(({ widthMm, align = 'start' }, k) => {
    const at = { start: x + 1, middle: x + widthMm / 2, end: x + widthMm - 1 }[align];
    x += widthMm;
    return text(at, bottomMm - 1.9, cells[k] ?? '', { sizeMm: bold ? 0.9 * textMm : textMm, bold, align });
  });
}
