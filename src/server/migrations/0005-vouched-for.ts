import { type Kysely, sql } from 'kysely';
import type { Migration } from 'kysely/migration';
import type { Tables } from '../tables.ts';
import {
  attachmentSeal,
  contentDigest,
  identitySeal,
  linkOf,
  noLink,
  revisionSeal,
  sealedDocument,
} from '../vouch/seals.ts';

const columns = [
  ['operations', 'link'],
  ['documents', 'head'],
  ['documents', 'facts'],
  ['documents', 'seal'],
  ['revisions', 'seal'],
  ['attachments', 'seal'],
  ['identity', 'seal'],
] as const;

/** Every row can be believed or not: what stands at this moment is taken as good, and vouched for from now on. */
export const vouchedFor: Migration = {
  async up(db: Kysely<unknown>): Promise<void> {
    for (const [table, column] of columns)
      await db.schema
        .alterTable(table)
        .addColumn(column, 'text', (c) => c.notNull().defaultTo(''))
        .execute();
    const tables = db as Kysely<Tables>;
    for (const { id } of await tables.selectFrom('documents').select('id').orderBy('id').execute())
      await sealDocument(tables, id);
    await sealAttachments(tables);
    const identity = await tables.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
    await tables
      .updateTable('identity')
      .set({ seal: identitySeal(identity) })
      .execute();
  },
};

/** Operations read and written at a time. */
const atOnce = 500;

async function sealDocument(db: Kysely<Tables>, id: string): Promise<void> {
  let head = noLink;
  for (let after = 0; ; ) {
    const found = await db
      .selectFrom('operations')
      .where('document', '=', id)
      .where('seq', '>', after)
      .selectAll()
      .orderBy('seq')
      .limit(atOnce)
      .execute();
    if (found.length === 0) break;
    const links = found.map((row) => {
      head = linkOf(head, row.seq, contentDigest(row));
      return sql`when ${row.seq} then ${head}`;
    });
    await sql`update operations set link = case seq ${sql.join(links, sql` `)} end
      where document = ${id} and seq > ${after} and seq <= ${found.at(-1)!.seq}`.execute(db);
    after = found.at(-1)!.seq;
  }
  const row = await db.selectFrom('documents').where('id', '=', id).selectAll().executeTakeFirstOrThrow();
  const { facts, seal } = sealedDocument({ ...row, head });
  await db.updateTable('documents').set({ head, facts, seal }).where('id', '=', id).execute();
  for (const revision of await db.selectFrom('revisions').where('document', '=', id).selectAll().execute())
    await db
      .updateTable('revisions')
      .set({ seal: revisionSeal(revision) })
      .where('document', '=', id)
      .where('revision', '=', revision.revision)
      .execute();
}

async function sealAttachments(db: Kysely<Tables>): Promise<void> {
  const found = await db.selectFrom('attachments').select(['hash', 'type', 'size', 'added_at']).execute();
  for (const row of found)
    await db
      .updateTable('attachments')
      .set({ seal: attachmentSeal(row) })
      .where('hash', '=', row.hash)
      .execute();
}
