import type { Finding } from '../engine/finding.ts';

/** What was odd about a picture: a finding; of records of 0.1 the sentence it was kept as then. */
export type TraceNote = Finding | string;

/** Room in the record. */
const mostCharacters = 8000;

/** As the record keeps it: data, never a sentence. The last are left out where there is no room. */
export function traceNotesText(findings: readonly Finding[]): string | null {
  const kept = findings.map(({ path, code, values }) => ({ path, code, values }));
  while (JSON.stringify(kept).length > mostCharacters) kept.pop();
  return kept.length > 0 ? JSON.stringify(kept) : null;
}

export function traceNotesOf(text: string | undefined): TraceNote[] {
  const told = text ?? '';
  if (!told.startsWith('[{')) return told.split('\n').filter(Boolean);
  try {
    const read: unknown = JSON.parse(told);
    return Array.isArray(read) ? read.filter(isFinding) : [];
  } catch {
    return [];
  }
}

function isFinding(value: unknown): value is Finding {
  const { path, code, values } = (value ?? {}) as Partial<Finding>;
  return (
    typeof path === 'string' && typeof code === 'string' && typeof values === 'object' && values !== null
  );
}
