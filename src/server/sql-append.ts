import type { Transaction } from 'kysely';
import { applyOperations, emptyDocument, sameValue } from '../record/document.ts';
import { type Operation, pathKey } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { ConflictError, DamagedError, documentNotFound, RefusedError } from './errors.ts';
import type { Appended } from './repository.ts';
import { operationOf, operationRow, storedOperation } from './sql-rows.ts';
import { summaryCollections, summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';
import { type DocumentRow, documentHolds, linked, sealedDocument } from './vouch/seals.ts';
import { lockDocument } from './vouch/snapshots.ts';

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
  const standing = await lockDocument(trx, document);
  if (!standing) return documentNotFound(document);
  if (!documentHolds(standing)) throw new DamagedError(damagedRow);
  const known = await knownOperations(trx, document, operations);
  const fresh = distinct(operations).filter((operation) => !known.has(operation.id));
  if (standing.last_seq > 0) refuseRunawayClock(fresh, standing.clock);
  if (fresh.length > 0) await store(trx, standing, fresh, receivedAt);
  const stored = fresh.map((operation, index) =>
    storedOperation(operation, standing.last_seq + index + 1, receivedAt),
  );
  const seqs = new Map([...known, ...stored.map(({ id, seq }) => [id, seq] as const)]);
  const accepted = operations.map(({ id }) => ({ id, seq: seqs.get(id)! }));
  return { accepted, stored, lastSeq: standing.last_seq + fresh.length };
}

const damagedRow =
  'What the shelf says of this document cannot be read as stored: the disk or the file is damaged. Press “Repair” on the shelf; the change is kept here and sent again';

async function store(
  trx: Transaction<Tables>,
  standing: DocumentRow,
  fresh: readonly Operation[],
  receivedAt: string,
): Promise<void> {
  const { id, last_seq } = standing;
  const rows = linked(
    fresh.map((operation, index) => operationRow(id, last_seq + index + 1, operation, receivedAt)),
    standing.head,
  );
  for (let start = 0; start < rows.length; start += rowsPerInsert) {
    await trx
      .insertInto('operations')
      .values(rows.slice(start, start + rowsPerInsert))
      .execute();
  }
  const summary = fresh.some((operation) => summaryCollections.includes(operation.path[0]))
    ? await summaryNow(trx, id, standing.kind as DocumentKind)
    : {};
  const { id: _, ...columns } = sealedDocument({
    ...standing,
    ...summary,
    updated_at: receivedAt,
    last_seq: last_seq + rows.length,
    clock: fresh.reduce((clock, operation) => Math.max(clock, operation.clock), standing.clock),
    head: rows.at(-1)!.link,
  });
  await trx.updateTable('documents').set(columns).where('id', '=', id).execute();
}

/** One of each id. @throws ConflictError when two of one id say different things */
function distinct(operations: readonly Operation[]): Operation[] {
  const first = new Map<string, Operation>();
  for (const operation of operations) {
    const before = first.get(operation.id);
    if (before) refuseOther(before, operation);
    else first.set(operation.id, operation);
  }
  return [...first.values()];
}

function refuseOther(stored: Operation, again: Operation): void {
  if (pathKey(again.path) === pathKey(stored.path) && sameValue(again.value, stored.value)) return;
  throw new ConflictError(
    `Operation ${stored.id} is stored already and says something else. Reload the page`,
  );
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
  for (const stored of found.map(operationOf)) refuseOther(stored, sent.get(stored.id)!);
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

async function summaryNow(trx: Transaction<Tables>, document: string, kind: DocumentKind) {
  const found = await trx
    .selectFrom('operations')
    .where('document', '=', document)
    .where('collection', 'in', summaryCollections)
    .selectAll()
    .execute();
  return summaryColumns(applyOperations(emptyDocument(document, kind), found.map(operationOf)));
}

/** Puts a document away, or brings it back; who has none of this id is told by the next look. */
export async function setGoneIn(trx: Transaction<Tables>, document: string, gone: boolean): Promise<void> {
  const standing = await trx
    .updateTable('documents')
    .set({ gone: gone ? 1 : 0 })
    .where('id', '=', document)
    .returningAll()
    .executeTakeFirst();
  if (!standing) return;
  if (!documentHolds({ ...standing, gone: 0 }) && !documentHolds({ ...standing, gone: 1 }))
    throw new DamagedError(damagedRow);
  const { facts, seal } = sealedDocument(standing);
  await trx.updateTable('documents').set({ facts, seal }).where('id', '=', document).execute();
}
