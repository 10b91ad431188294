/**
 * A table as RFC 4180 writes it: lines end in CR LF, fields with comma, quote or line break stand in quotes, quotes
 * are doubled. A text that a spreadsheet would take for a formula (it begins with = + - @, a tab or a return) gets
 * an apostrophe in front, as OWASP's page on CSV injection advises; numbers are written as numbers.
 */
type CsvField = string | number;

export function writeCsv(rows: readonly (readonly CsvField[])[]): string {
  return rows.map((row) => row.map(writeField).join(',')).join('\r\n') + (rows.length > 0 ? '\r\n' : '');
}

function writeField(field: CsvField): string {
  if (typeof field === 'number') return Number.isFinite(field) ? String(field) : '';
  const safe = /(^|[;\t])\s*[=+\-@\t\r]/.test(field) ? `'${field}` : field;
  // A spreadsheet set to semicolons or tabs would part an unquoted field there.
  return /[",;\t\r\n]/.test(safe) ? `"${safe.replaceAll('"', '""')}"` : safe;
}
