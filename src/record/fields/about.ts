/** Which rod it is, and for whom. */
import { rodKinds } from '../../engine/kinds/rod-kinds.ts';
import { choice, flag, instant, many, namesOf, single, text } from './declare.ts';

export const about = single('Build', {
  title: text('title', 200),
  customer: text('customer', 200),
  rodKind: choice('rod', namesOf(rodKinds), { usual: 'fly' }),
  lineWeight: text('line weight', 60, { example: '5' }),
  note: text('note', 20_000, { lines: 2 }),
  /** Invented demonstration data; never the builder's own. */
  demo: flag('invented demonstration'),
  createdAt: instant('begun'),
  againFrom: text('the same again as', 60),
  copyOf: text('a copy of', 60),
});

export const tags = many('Tag', { text: text('words', 60) });

export const attachments = many('Picture or paper', {
  content: { kind: 'attachment', name: 'content' },
  name: text('name', 200),
  type: text('kind of file', 100),
  note: text('note', 2000),
});
