import { type Kysely, PostgresAdapter, sql } from 'kysely';
import type { Migration } from 'kysely/migration';

/** Documents, their operations, attachments and frozen revisions. */
export const record: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await createDocuments(db);
    await createOperations(db);
    await createAttachments(db);
    await createRevisions(db);
  },
};

async function createDocuments(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('documents')
    .addColumn('id', 'text', (c) => c.primaryKey())
    .addColumn('kind', 'text', (c) => c.notNull())
    .addColumn('title', 'text', (c) => c.notNull())
    .addColumn('customer', 'text', (c) => c.notNull())
    .addColumn('rod_kind', 'text', (c) => c.notNull())
    .addColumn('line_weight', 'text', (c) => c.notNull())
    .addColumn('search', 'text', (c) => c.notNull())
    .addColumn('demo', 'integer', (c) => c.notNull())
    .addColumn('gone', 'integer', (c) => c.notNull().defaultTo(0))
    .addColumn('created_at', 'text', (c) => c.notNull())
    .addColumn('updated_at', 'text', (c) => c.notNull())
    .addColumn('last_seq', 'integer', (c) => c.notNull())
    .addColumn('clock', 'bigint', (c) => c.notNull())
    .execute();
  await db.schema
    .createIndex('documents_by_use')
    .on('documents')
    .columns(['kind', 'gone', 'updated_at', 'id'])
    .execute();
}

async function createOperations(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('operations')
    .addColumn('document', 'text', (c) => c.notNull().references('documents.id'))
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('id', 'text', (c) => c.notNull())
    .addColumn('device', 'text', (c) => c.notNull())
    .addColumn('clock', 'bigint', (c) => c.notNull())
    .addColumn('gesture', 'text', (c) => c.notNull())
    .addColumn('collection', 'text', (c) => c.notNull())
    .addColumn('row_id', 'text', (c) => c.notNull())
    .addColumn('field', 'text', (c) => c.notNull())
    .addColumn('old_value', 'text', (c) => c.notNull())
    .addColumn('new_value', 'text', (c) => c.notNull())
    .addColumn('written_at', 'text', (c) => c.notNull())
    .addColumn('received_at', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('operations_in_order', ['document', 'seq'])
    .addUniqueConstraint('operations_once', ['document', 'id'])
    .execute();
  await db.schema
    .createIndex('operations_by_collection')
    .on('operations')
    .columns(['document', 'collection'])
    .execute();
}

async function createAttachments(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('attachments')
    .addColumn('hash', 'text', (c) => c.primaryKey())
    .addColumn('type', 'text', (c) => c.notNull())
    .addColumn('size', 'integer', (c) => c.notNull())
    .addColumn('bytes', byteType(db), (c) => c.notNull())
    .addColumn('added_at', 'text', (c) => c.notNull())
    .execute();
}

async function createRevisions(db: Kysely<unknown>): Promise<void> {
  await db.schema
    .createTable('revisions')
    .addColumn('document', 'text', (c) => c.notNull().references('documents.id'))
    .addColumn('revision', 'text', (c) => c.notNull())
    .addColumn('seq', 'integer', (c) => c.notNull())
    .addColumn('made_at', 'text', (c) => c.notNull())
    .addColumn('engine_version', 'text', (c) => c.notNull())
    .addColumn('frozen_values', 'text', (c) => c.notNull())
    .addPrimaryKeyConstraint('revisions_once', ['document', 'revision'])
    .execute();
}

/** The one type the two databases name differently. */
function byteType(db: Kysely<unknown>) {
  return db.getExecutor().adapter instanceof PostgresAdapter ? sql`bytea` : sql`blob`;
}
