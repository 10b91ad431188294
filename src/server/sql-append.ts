import type { Transaction } from 'kysely';
import { applyOperations, emptyDocument, sameValue } from '../record/document.ts';
import { type Operation, pathKey } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { ConflictError, documentNotFound, RefusedError } from './errors.ts';
import type { Appended } from './repository.ts';
import { operationOf, operationRow, storedOperation } from './sql-rows.ts';
import { summaryCollections, summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';

/** How far ahead of a document's clock a device may be; a clock near the largest number would end all editing. */
export const furthestClockAhead = 1_000_000;
/** Rows of one insert; both databases limit the values of one statement. */
const rowsPerInsert = 1000;

/**
 * The first statement writes: it takes SQLite's write lock, or PostgreSQL's lock on the document's row, before
 * anything is read, so `seq` counts without gaps and a reader never sees a later one before an earlier.
 */
export async function appendIn(
  trx: Transaction<Tables>,
  document: string,
  operations: readonly Operation[],
  receivedAt: string,
): Promise<Appended> {
  const standing = await trx
    .updateTable('documents')
    .set({ updated_at: receivedAt })
    .where('id', '=', document)
    .returning(['last_seq', 'clock', 'updated_at', 'kind'])
    .executeTakeFirst();
  if (!standing) return documentNotFound(document);
  const known = await knownOperations(trx, document, operations);
  const fresh = [...new Map(operations.map((operation) => [operation.id, operation])).values()].filter(
    (operation) => !known.has(operation.id),
  );
  if (standing.last_seq > 0) refuseRunawayClock(fresh, standing.clock);
  let seq = standing.last_seq;
  const inserted = fresh.map((operation) => operationRow(document, ++seq, operation, receivedAt));
  for (let start = 0; start < inserted.length; start += rowsPerInsert) {
    await trx
      .insertInto('operations')
      .values(inserted.slice(start, start + rowsPerInsert))
      .execute();
  }
  await trx
    .updateTable('documents')
    .set({
      last_seq: seq,
      clock: fresh.reduce((clock, operation) => Math.max(clock, operation.clock), standing.clock),
    })
    .where('id', '=', document)
    .execute();
  if (fresh.some((operation) => summaryCollections.includes(operation.path[0])))
    await renewSummary(trx, document, standing.kind as DocumentKind);
  const stored = fresh.map((operation, index) =>
    storedOperation(operation, standing.last_seq + index + 1, receivedAt),
  );
  const seqs = new Map([...known, ...inserted.map((row) => [row.id, row.seq] as const)]);
  const accepted = operations.map(({ id }) => ({ id, seq: seqs.get(id)! }));
  return { accepted, stored, lastSeq: seq };
}

/** Seq of the operations that are there already. @throws ConflictError when one says something else there */
async function knownOperations(
  trx: Transaction<Tables>,
  document: string,
  operations: readonly Operation[],
): Promise<Map<string, number>> {
  const sent = new Map(operations.map((operation) => [operation.id, operation]));
  if (sent.size === 0) return new Map();
  const found = await trx
    .selectFrom('operations')
    .where('document', '=', document)
    .where('id', 'in', [...sent.keys()])
    .selectAll()
    .execute();
  for (const stored of found.map(operationOf)) {
    const again = sent.get(stored.id)!;
    if (pathKey(again.path) === pathKey(stored.path) && sameValue(again.value, stored.value)) continue;
    throw new ConflictError(
      `Operation ${stored.id} is stored already and says something else. Reload the page`,
    );
  }
  return new Map(found.map((row) => [row.id, row.seq]));
}

function refuseRunawayClock(operations: readonly Operation[], clock: number): void {
  const runaway = operations.find((operation) => operation.clock > clock + furthestClockAhead);
  if (!runaway) return;
  throw new RefusedError([
    {
      path: pathKey(runaway.path),
      message: `clock ${runaway.clock} is too far ahead of the document's ${clock}. Reload the page`,
    },
  ]);
}

async function renewSummary(trx: Transaction<Tables>, document: string, kind: DocumentKind): Promise<void> {
  const found = await trx
    .selectFrom('operations')
    .where('document', '=', document)
    .where('collection', 'in', summaryCollections)
    .selectAll()
    .execute();
  const state = applyOperations(emptyDocument(document, kind), found.map(operationOf));
  await trx.updateTable('documents').set(summaryColumns(state)).where('id', '=', document).execute();
}
