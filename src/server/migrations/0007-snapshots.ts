import type { Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';

/** What a long history comes down to, so that opening it replays its end alone; see `vouch/snapshots`. */
export const snapshots: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('snapshots')
      .addColumn('document', 'text', (c) => c.primaryKey())
      .addColumn('seq', 'integer', (c) => c.notNull())
      .addColumn('link', 'text', (c) => c.notNull())
      .addColumn('standing', 'text', (c) => c.notNull())
      .addColumn('seal', 'text', (c) => c.notNull())
      .execute();
  },
};
