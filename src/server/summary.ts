import type { CardFacts } from '../record/api.ts';
import { rows, singleRow } from '../record/document.ts';
import type { DocumentState } from '../record/operation.ts';

/** Collections whose values a list shows or searches. */
export const summaryCollections: readonly string[] = ['about', 'tags', 'blank', 'job'];

/** The columns of a document that repeat its own values. */
export function summaryColumns(state: DocumentState) {
  const { fields } = singleRow(state, 'about');
  const text = (field: string) => (typeof fields[field] === 'string' ? fields[field] : '');
  const card = cardFacts(state);
  const columns = {
    title: text('title'),
    customer: text('customer'),
    rod_kind: text('rodKind'),
    line_weight: text('lineWeight'),
    demo: fields.demo === true ? 1 : 0,
  };
  const words = [
    ...Object.values(columns).filter((value) => typeof value === 'string'),
    ...(card.tags ?? []),
  ];
  words.push(
    card.label ?? '',
    card.series ?? '',
    card.broken ?? '',
    text('contact'),
    text('note').slice(0, 2000),
  );
  const series = seriesName(card.series ?? '');
  return {
    ...columns,
    series,
    card: JSON.stringify(card),
    search: searchText(words.filter((word) => word !== '').join('\n')),
  };
}

/** Blanks are of one series whose names differ in case and spaces alone. */
export function seriesName(text: string): string {
  return searchText(text).replace(/\s+/g, ' ').trim();
}

function cardFacts(state: DocumentState): CardFacts {
  const [about, blank, job] = ['about', 'blank', 'job'].map((name) => singleRow(state, name).fields);
  const tags = rows(state, 'tags').flatMap((row) => (row.fields.text ? [String(row.fields.text)] : []));
  const facts: CardFacts = { tags: tags.length > 0 ? tags.sort() : undefined };
  const put = (name: Exclude<keyof CardFacts, 'tags'>, value: unknown) => {
    if (typeof value === 'string' && value !== '') facts[name] = value;
  };
  put('label', blank.label);
  put('series', blank.series);
  put('broken', job.broken);
  put('build', about.build);
  put('againFrom', about.againFrom);
  put('copyOf', about.copyOf);
  put('promisedFor', job.promisedFor);
  put('doneAt', job.doneAt);
  put('handedOverAt', job.handedOverAt);
  return facts;
}

/** Text as it is compared: without case, and one form for each letter. */
export function searchText(text: string): string {
  return text.normalize('NFKC').toLowerCase();
}
