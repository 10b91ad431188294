import { type Kysely, sql, type Transaction } from 'kysely';
import { applyOperations, emptyDocument } from '../record/document.ts';
import { type Path, pathKey } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import { ConflictError, documentNotFound } from './errors.ts';
import { operationOf } from './sql-rows.ts';
import { summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';
import { DamagedDocument } from './vouch/check-operations.ts';
import { readDocument } from './vouch/read-document.ts';
import { linked, noLink, type OperationRow, revisionSeal, sealedDocument } from './vouch/seals.ts';
import { forgetSnapshot, lockDocument } from './vouch/snapshots.ts';

/** Instead of a value that was erased for good. */
const nothing = 'null';
/** Rows of one insert; both databases limit the values of one statement. */
const rowsPerInsert = 1000;

/**
 * Takes every value that ever stood at these paths out of a document for good, out of its history and its printed
 * states too. That something was written there, when and by which device stays. Answers the pictures that are gone.
 * @throws DamagedDocument, NotFoundError
 */
export async function eraseIn(
  trx: Transaction<Tables>,
  document: string,
  paths: readonly Path[],
): Promise<string[]> {
  const row = await lockDocument(trx, document);
  if (!row) return documentNotFound(document);
  const { bad, faults } = await readDocument(trx, row);
  if (faults.length > 0)
    throw new DamagedDocument(document, { good: [], bad: bad.length > 0 ? bad : [row.last_seq] });
  const keys = new Set(paths.map(pathKey));
  const before = await trx
    .selectFrom('operations')
    .where('document', '=', document)
    .selectAll()
    .orderBy('seq')
    .execute();
  const erased = linked(
    before.map((operation) => (keys.has(keyOf(operation)) ? without(operation) : operation)),
    noLink,
  );
  await trx.deleteFrom('operations').where('document', '=', document).execute();
  for (let start = 0; start < erased.length; start += rowsPerInsert)
    await trx
      .insertInto('operations')
      .values(erased.slice(start, start + rowsPerInsert))
      .execute();
  const state = applyOperations(emptyDocument(document, row.kind as DocumentKind), erased.map(operationOf));
  const { id: _, ...columns } = sealedDocument({
    ...row,
    ...summaryColumns(state),
    head: erased.at(-1)?.link ?? noLink,
  });
  await trx.updateTable('documents').set(columns).where('id', '=', document).execute();
  await forgetSnapshot(trx, document);
  await eraseInRevisions(trx, document, keys);
  return erasePictures(
    trx,
    before.filter((operation) => keys.has(keyOf(operation))),
  );
}

/** On SQLite the file and its log keep nothing of it either (`secure_delete`). */
export async function forgetLog(db: Kysely<Tables>): Promise<void> {
  await sql`PRAGMA wal_checkpoint(TRUNCATE)`.execute(db);
}

function keyOf({ collection, row_id, field }: OperationRow): string {
  return pathKey([collection, row_id, field]);
}

function without(operation: OperationRow): OperationRow {
  return { ...operation, old_value: nothing, new_value: nothing };
}

async function eraseInRevisions(
  trx: Transaction<Tables>,
  document: string,
  keys: ReadonlySet<string>,
): Promise<void> {
  for (const row of await trx
    .selectFrom('revisions')
    .where('document', '=', document)
    .selectAll()
    .execute()) {
    const values = Object.entries(JSON.parse(row.frozen_values) as Record<string, unknown>);
    const left = JSON.stringify(Object.fromEntries(values.filter(([key]) => !keys.has(key))));
    if (left === row.frozen_values) continue;
    const renewed = { ...row, frozen_values: left };
    await trx
      .updateTable('revisions')
      .set({ frozen_values: left, seal: revisionSeal(renewed) })
      .where('document', '=', document)
      .where('revision', '=', row.revision)
      .execute();
  }
}

/** A picture goes once no document names it. */
async function erasePictures(
  trx: Transaction<Tables>,
  operations: readonly OperationRow[],
): Promise<string[]> {
  const named = operations.filter(
    ({ collection, field }) => collection === 'attachments' && field === 'content',
  );
  const values = new Set(named.flatMap(({ old_value, new_value }) => [old_value, new_value]));
  values.delete(nothing);
  return dropUnusedIn(
    trx,
    [...values].map((value) => JSON.parse(value) as string),
  );
}

/** Of these pictures those that no document names go. */
export async function dropUnusedIn(trx: Transaction<Tables>, hashes: readonly string[]): Promise<string[]> {
  const gone: string[] = [];
  for (const hash of hashes) {
    const named = await trx
      .selectFrom('operations')
      .where('new_value', '=', JSON.stringify(hash))
      .select('id')
      .executeTakeFirst();
    if (named) continue;
    await trx.deleteFrom('attachments').where('hash', '=', hash).execute();
    gone.push(hash);
  }
  return gone;
}

/** What can be erased, in the builder's words. */
export function erasable(what: 'customer' | 'picture', row = ''): Path[] {
  if (what === 'customer') return ['customer', 'contact'].map((field): Path => ['about', '-', field]);
  if (row === '') throw new ConflictError('Say which picture is to be erased: “row” is its row in the build');
  return ['content', 'name', 'note'].map((field): Path => ['attachments', row, field]);
}
