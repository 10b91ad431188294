import type { Kysely } from 'kysely';
import type { Migration } from 'kysely/migration';

/** Codes that let the next device in, where several server processes share a database: made by one, taken by all. */
export const pairingCodes: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('pairing_codes')
      .addColumn('hash', 'text', (c) => c.primaryKey())
      .addColumn('ends_at', 'text', (c) => c.notNull())
      .addColumn('tries_left', 'integer', (c) => c.notNull())
      .execute();
  },
};
