import type { Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';

/**
 * What several server processes of one database share: paired devices (on SQLite they lie in a file of the data
 * folder instead) and long computations. And when the record was last replaced by a backup.
 */
export const sharedServers: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('sessions')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('name', 'text', (c) => c.notNull())
      .addColumn('paired_at', 'text', (c) => c.notNull())
      .addColumn('hash', 'text', (c) => c.notNull().unique())
      .execute();
    await db.schema
      .createTable('jobs')
      .addColumn('id', 'text', (c) => c.primaryKey())
      .addColumn('kind', 'text', (c) => c.notNull())
      .addColumn('input', 'text', (c) => c.notNull())
      .addColumn('state', 'text', (c) => c.notNull())
      .addColumn('done', 'integer', (c) => c.notNull().defaultTo(0))
      .addColumn('total', 'integer', (c) => c.notNull().defaultTo(0))
      .addColumn('attempts', 'integer', (c) => c.notNull().defaultTo(0))
      .addColumn('result', 'text')
      .addColumn('message', 'text', (c) => c.notNull().defaultTo(''))
      .addColumn('created_at', 'text', (c) => c.notNull())
      .addColumn('updated_at', 'text', (c) => c.notNull())
      .execute();
    await db.schema
      .alterTable('identity')
      .addColumn('restored_at', 'text', (c) => c.notNull().defaultTo(''))
      .execute();
    await db.schema.createIndex('jobs_by_state').on('jobs').columns(['state', 'created_at']).execute();
  },
};
