export type Alignment = 'start' | 'end';

/** Columns of a plain text table, two spaces apart, figures to the right. */
export function textTable(
  heads: readonly string[],
  rows: readonly (readonly string[])[],
  alignments: readonly Alignment[] = heads.map(() => 'end'),
): string {
  const widths = heads.map((head, column) =>
    Math.max(...[head, ...rows.map((row) => row[column])].map(width)),
  );
  const pad = (cell: string, column: number) => {
    const room = ' '.repeat(widths[column] - width(cell));
    return alignments[column] === 'end' ? room + cell : cell + room;
  };
  return [heads, ...rows].map((row) => `  ${row.map(pad).join('  ').trimEnd()}`).join('\n');
}

function width(cell: string): number {
  return [...cell].length;
}
