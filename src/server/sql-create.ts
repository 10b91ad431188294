import { setImmediate as breathe } from 'node:timers/promises';
import type { Kysely, Transaction } from 'kysely';
import { applyOperations, emptyDocument } from '../record/document.ts';
import { ConflictError } from './errors.ts';
import type { NewDocument, Pace } from './repository.ts';
import { appendIn } from './sql-append.ts';
import { operationRow } from './sql-rows.ts';
import { summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';
import { arrivingKind, linked, noLink, sealedDocument } from './vouch/seals.ts';

/** More are stored in pieces, with room between them for what others write. */
export const operationsAtOnce = 1000;

/** @throws ConflictError when the id is taken */
export async function createIn(trx: Transaction<Tables>, document: NewDocument): Promise<void> {
  await insertEmpty(trx, document, document.kind);
  await appendIn(trx, document.id, document.operations, document.at);
}

/**
 * A long history arrives unseen, piece by piece, and is a document once the last is there; what a killed server
 * leaves of one is taken away by the next start. @throws ConflictError when the id is taken
 */
export async function createInPieces(
  db: Kysely<Tables>,
  document: NewDocument,
  { signal, onProgress = () => undefined }: Pace = {},
): Promise<void> {
  const { id, kind, at, operations } = document;
  await insertEmpty(db, document, arrivingKind);
  try {
    let link = noLink;
    for (let start = 0; start < operations.length; start += operationsAtOnce) {
      const piece = operations.slice(start, start + operationsAtOnce);
      const rows = linked(
        piece.map((operation, index) => operationRow(id, start + index + 1, operation, at)),
        link,
      );
      await db.insertInto('operations').values(rows).execute();
      link = rows.at(-1)!.link;
      onProgress(start + piece.length, operations.length);
      await breathe();
      signal?.throwIfAborted();
    }
    const state = applyOperations(emptyDocument(id, kind), operations);
    const counters = { created_at: at, updated_at: at, gone: 0, last_seq: operations.length };
    const row = { id, kind, ...summaryColumns(state), ...counters, clock: state.clock, head: link };
    const { id: _, ...columns } = sealedDocument(row);
    await db.updateTable('documents').set(columns).where('id', '=', id).execute();
  } catch (error) {
    await removeArriving(db, id);
    throw error;
  }
}

/** What was still arriving when a server was ended; nobody has seen it. */
export async function removeArriving(db: Kysely<Tables>, only?: string): Promise<void> {
  let arriving = db.selectFrom('documents').where('kind', '=', arrivingKind).select('id');
  if (only !== undefined) arriving = arriving.where('id', '=', only);
  for (const { id } of await arriving.execute())
    await db.transaction().execute(async (trx) => {
      await trx.deleteFrom('operations').where('document', '=', id).execute();
      await trx.deleteFrom('documents').where('id', '=', id).execute();
    });
}

async function insertEmpty(db: Kysely<Tables>, { id, at }: NewDocument, kind: string): Promise<void> {
  const texts = {
    title: '',
    customer: '',
    rod_kind: '',
    line_weight: '',
    search: '',
    card: '{}',
    series: '',
  };
  const counters = { created_at: at, updated_at: at, last_seq: 0, clock: 0, gone: 0, demo: 0, head: noLink };
  const { numInsertedOrUpdatedRows } = await db
    .insertInto('documents')
    .values(sealedDocument({ id, kind, ...texts, ...counters }))
    .onConflict((conflict) => conflict.column('id').doNothing())
    .executeTakeFirstOrThrow();
  if (Number(numInsertedOrUpdatedRows) === 0) throw new ConflictError(`Document ${id} exists already`);
}
