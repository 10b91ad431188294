/** Reads check-values.json: see README.md for where the rows come from and what their flags mean. */
import checkFile from './check-values.json' with { type: 'json' };

export interface CheckRow {
  id: string;
  quantity: string;
  inputs: Record<string, unknown>;
  value: number | number[];
  unit: string;
  tolerance: number;
  source: string;
  flag: 'FOUND' | 'RECOMPUTED' | 'MEMORY';
}

interface CheckFile {
  sources: string[];
  rows: (Omit<CheckRow, 'source'> & { source: number })[];
}

const file = checkFile as CheckFile;

/** Rows that may be tested against: a row from memory is never among them. */
export const checkRows: readonly CheckRow[] = file.rows
  .filter((row) => row.flag !== 'MEMORY')
  .map((row) => ({ ...row, source: file.sources[row.source] }));

export function checkRowsOf(idStart: string): CheckRow[] {
  const rows = checkRows.filter((row) => row.id.startsWith(idStart));
  if (rows.length === 0) throw new Error(`no check rows begin with ${idStart}`);
  return rows;
}

/** The value of a row that holds one number. */
export function checkValue(id: string): number {
  const row = checkRows.find((candidate) => candidate.id === id);
  if (typeof row?.value !== 'number') throw new Error(`no check row ${id} with one number`);
  return row.value;
}
