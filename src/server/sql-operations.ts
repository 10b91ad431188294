import type { Kysely } from 'kysely';
import type { StoredOperation } from '../record/operation.ts';
import { troubleOf } from './database-trouble.ts';
import type { Tables } from './tables.ts';
import { checkOperations, DamagedDocument } from './vouch/check-operations.ts';
import { noLink, type OperationRow } from './vouch/seals.ts';

/** An operation's row with what its document says of its end. */
export type RowWithEnd = OperationRow & { doc_head: string; doc_seq: number };

/** Operations after a place, each held against its link. @throws DamagedDocument with those that are good */
export async function readOperations(
  db: Kysely<Tables>,
  document: string,
  after: number,
  limit: number,
): Promise<StoredOperation[]> {
  // One before the place comes too: its link is what the first is held against.
  const rows = await db
    .selectFrom('operations')
    .innerJoin('documents', 'documents.id', 'operations.document')
    .where('operations.document', '=', document)
    .where('operations.seq', '>=', after)
    .selectAll('operations')
    .select(['documents.head as doc_head', 'documents.last_seq as doc_seq'])
    .orderBy('operations.seq')
    .limit(limit + 1)
    .execute()
    .catch((error: unknown) => {
      if (!unreadable(error)) throw error;
      return rowsOneByOne(db, document, after, limit);
    });
  return believedOperations(document, rows, after, limit);
}

/** @param rows from the place itself on, at most one more than the limit */
export function believedOperations(
  document: string,
  rows: readonly RowWithEnd[],
  after: number,
  limit: number,
): StoredOperation[] {
  const [first] = rows;
  const before = first && first.seq === after ? first : undefined;
  const run = (before ? rows.slice(1) : rows).slice(0, limit);
  // Reading on from a place that is not there any more: the document itself says so elsewhere.
  if (run.length === 0 && !before) return [];
  const reachesEnd = rows.length <= limit;
  const { doc_head: head, doc_seq: lastSeq } = rows[0];
  const checked = checkOperations(run, {
    link: before?.link ?? noLink,
    seq: after,
    end: reachesEnd ? { head, lastSeq } : undefined,
  });
  if (checked.bad.length > 0) throw new DamagedDocument(document, checked);
  return checked.good;
}

/** SQLite's page is damaged, or a number is none that JavaScript has. */
export function unreadable(error: unknown): boolean {
  if (troubleOf(error, '')?.kind === 'damaged') return true;
  return (error as { code?: string }).code === 'ERR_OUT_OF_RANGE';
}

/** Slow, and only for a document one of whose rows ends every other query. */
async function rowsOneByOne(
  db: Kysely<Tables>,
  document: string,
  after: number,
  limit: number,
): Promise<RowWithEnd[]> {
  const end = await db
    .selectFrom('documents')
    .where('id', '=', document)
    .select(['head as doc_head', 'last_seq as doc_seq'])
    .executeTakeFirstOrThrow();
  const rows: RowWithEnd[] = [];
  for (let seq = after; seq <= Math.min(end.doc_seq, after + limit); seq++) {
    const row = await db
      .selectFrom('operations')
      .where('document', '=', document)
      .where('seq', '=', seq)
      .selectAll()
      .executeTakeFirst()
      .catch((error: unknown) => {
        if (!unreadable(error)) throw error;
        return undefined;
      });
    if (row) rows.push({ ...row, ...end });
  }
  return rows;
}
