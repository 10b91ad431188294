import { randomUUID } from 'node:crypto';
import { type Kysely, sql } from 'kysely';
import type { Migration } from 'kysely/migration';

/** One row: which record this is, so that what was meant for another never lands in it. */
export const identity: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    await db.schema
      .createTable('identity')
      .addColumn('record', 'text', (c) => c.primaryKey())
      .execute();
    await sql`insert into identity (record) values (${randomUUID()})`.execute(db);
  },
};
