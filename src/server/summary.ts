import { rows, singleRow } from '../record/document.ts';
import type { DocumentState } from '../record/operation.ts';

/** Collections whose values a list shows or searches. */
export const summaryCollections: readonly string[] = ['about', 'tags'];

/** The columns of a document that repeat its own values. */
export function summaryColumns(state: DocumentState) {
  const { fields } = singleRow(state, 'about');
  const text = (field: string) => (typeof fields[field] === 'string' ? fields[field] : '');
  const tags = rows(state, 'tags').map((row) => String(row.fields.text ?? ''));
  const columns = {
    title: text('title'),
    customer: text('customer'),
    rod_kind: text('rodKind'),
    line_weight: text('lineWeight'),
    demo: fields.demo === true ? 1 : 0,
  };
  const words = [...Object.values(columns).filter((value) => typeof value === 'string'), ...tags];
  words.push(text('note').slice(0, 2000));
  return { ...columns, search: searchText(words.join('\n')) };
}

/** Text as it is compared: without case, and one form for each letter. */
export function searchText(text: string): string {
  return text.normalize('NFKC').toLowerCase();
}
