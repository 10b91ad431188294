import type { Kysely, Transaction } from 'kysely';
import type { StoredOperation } from '../../record/operation.ts';
import type { Standing } from '../../record/standing.ts';
import { unreadable } from '../sql-operations.ts';
import type { Tables } from '../tables.ts';
import { snapshotSeal } from './seals.ts';

/** The kept snapshot of a document, where it is what was stored and stands at an operation that is still that one. */
export async function readSnapshot(db: Kysely<Tables>, document: string): Promise<Standing | undefined> {
  try {
    const row = await db
      .selectFrom('snapshots')
      .innerJoin('operations', (join) =>
        join
          .onRef('operations.document', '=', 'snapshots.document')
          .onRef('operations.seq', '=', 'snapshots.seq')
          .onRef('operations.link', '=', 'snapshots.link'),
      )
      .where('snapshots.document', '=', document)
      .selectAll('snapshots')
      .executeTakeFirst();
    if (!row || row.seal !== snapshotSeal(row)) return undefined;
    return { seq: row.seq, operations: JSON.parse(row.standing) as StoredOperation[] };
  } catch (error) {
    if (!unreadable(error)) throw error;
    return undefined;
  }
}

/** By which a snapshot at this operation can be told from one of another history. */
export async function linkAt(db: Kysely<Tables>, document: string, seq: number): Promise<string | undefined> {
  const row = await db
    .selectFrom('operations')
    .where('document', '=', document)
    .where('seq', '=', seq)
    .select('link')
    .executeTakeFirst();
  return row?.link;
}

/** @param link of the operation at `standing.seq` before the history was read: erased meanwhile, nothing is kept */
export async function keepSnapshotIn(
  trx: Transaction<Tables>,
  document: string,
  { seq, operations }: Standing,
  link: string,
): Promise<void> {
  await lockDocument(trx, document);
  if ((await linkAt(trx, document, seq)) !== link) return;
  const row = { document, seq, link, standing: JSON.stringify(operations) };
  await forgetSnapshot(trx, document);
  await trx
    .insertInto('snapshots')
    .values({ ...row, seal: snapshotSeal(row) })
    .execute();
}

export async function forgetSnapshot(trx: Transaction<Tables>, document: string): Promise<void> {
  await trx.deleteFrom('snapshots').where('document', '=', document).execute();
}

/** Takes the write lock, on PostgreSQL that of this document; answers its row. */
export function lockDocument(trx: Transaction<Tables>, document: string) {
  return trx
    .updateTable('documents')
    .set((e) => ({ updated_at: e.ref('updated_at') }))
    .where('id', '=', document)
    .returningAll()
    .executeTakeFirst();
}
