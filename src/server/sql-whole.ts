import type { Transaction } from 'kysely';
import { applyOperations, emptyDocument } from '../record/document.ts';
import { ConflictError } from './errors.ts';
import type { Pieces, StoredAttachment, WholeDocument } from './repository.ts';
import { attachmentRow, operationRow, revisionRow } from './sql-rows.ts';
import { summaryColumns } from './summary.ts';
import type { Tables } from './tables.ts';
import { linked, noLink, sealedDocument } from './vouch/seals.ts';

/** Rows of one insert; both databases limit the values of one statement. */
const rowsPerInsert = 1000;

/** A whole record's documents and attachments into an empty one, with their own numbers and times. */
export async function addWholeIn(
  trx: Transaction<Tables>,
  documents: Pieces<WholeDocument>,
  attachments: Pieces<StoredAttachment & { addedAt: string }>,
): Promise<void> {
  if (await trx.selectFrom('documents').select('id').limit(1).executeTakeFirst())
    throw new ConflictError('The record is not empty any more. Import into an empty one');
  for await (const document of documents) await addDocument(trx, document);
  for await (const { hash, type, bytes, addedAt } of attachments)
    await trx.insertInto('attachments').values(attachmentRow({ hash, type, bytes }, addedAt)).execute();
}

export async function addDocument(trx: Transaction<Tables>, document: WholeDocument): Promise<void> {
  const { id, kind, gone, createdAt, updatedAt, history, revisions } = document;
  const state = applyOperations(emptyDocument(id, kind), history);
  const rows = linked(
    history.map(({ seq, receivedAt, ...operation }) => operationRow(id, seq, operation, receivedAt)),
    noLink,
  );
  const row = {
    id,
    kind,
    gone: gone ? 1 : 0,
    ...summaryColumns(state),
    created_at: createdAt,
    updated_at: updatedAt,
    last_seq: history.length,
    clock: state.clock,
    head: rows.at(-1)?.link ?? noLink,
  };
  await trx.insertInto('documents').values(sealedDocument(row)).execute();
  for (let start = 0; start < rows.length; start += rowsPerInsert)
    await trx
      .insertInto('operations')
      .values(rows.slice(start, start + rowsPerInsert))
      .execute();
  for (const revision of revisions) await trx.insertInto('revisions').values(revisionRow(revision)).execute();
}
