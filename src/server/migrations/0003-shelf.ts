import type { Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';
import { applyOperations, emptyDocument } from '../../record/document.ts';
import type { DocumentKind } from '../../record/schema.ts';
import { operationOf } from '../sql-rows.ts';
import { summaryCollections, summaryColumns } from '../summary.ts';
import type { Tables } from '../tables.ts';

/** Cards say more and are found by more: tags, what is written on the blank, its series. */
export const shelf: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const [column, otherwise] of [
      ['card', '{}'],
      ['series', ''],
    ])
      await db.schema
        .alterTable('documents')
        .addColumn(column, 'text', (c) => c.notNull().defaultTo(otherwise))
        .execute();
    await db.schema.createIndex('documents_by_series').on('documents').columns(['series', 'kind']).execute();
    await fillIn(db as Kysely<Tables>);
  },
};

/** One document after the other: a shelf of many thousands fits into no memory at once. */
async function fillIn(db: Kysely<Tables>): Promise<void> {
  const documents = await db.selectFrom('documents').select(['id', 'kind']).orderBy('id').execute();
  for (const { id, kind } of documents) {
    const found = await db
      .selectFrom('operations')
      .where('document', '=', id)
      .where('collection', 'in', summaryCollections)
      .selectAll()
      .execute();
    const state = applyOperations(emptyDocument(id, kind as DocumentKind), found.map(operationOf));
    // Only what this migration added: a later summary may have columns that are not there yet.
    const { card, series, search } = summaryColumns(state);
    await db.updateTable('documents').set({ card, series, search }).where('id', '=', id).execute();
  }
}
