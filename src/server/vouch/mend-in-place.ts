import { closeSync, fsyncSync, openSync, writeSync } from 'node:fs';
import type { Kysely, Transaction } from 'kysely';
import type { DamageNote } from '../../record/record-api.ts';
import { renumbered } from '../../record/renumber.ts';
import type { WholeDocument } from '../repository.ts';
import { attachmentRow } from '../sql-rows.ts';
import type { Tables } from '../tables.ts';
import { bestOf, type Donor } from './best-of.ts';
import { findingOf } from './check-whole.ts';
import { type Copied, nothingCopied, ownAttachment, store } from './copy-record.ts';
import { readDocument } from './read-document.ts';
import { arrivingKind, identityHolds, identitySeal } from './seals.ts';

export interface MendOptions {
  donor: Donor;
  at: string;
  /** A file, one row a line as JSON: what stood in the place of what was mended. */
  keptAs: string;
  onProgress(done: number, total: number): void;
}

export type Mended = Pick<Copied, 'mended' | 'leftOut'>;

/**
 * Mends a record on PostgreSQL where it stands, each damaged document and picture in a transaction of its own, while
 * others write. What cannot be mended is left as it is and named.
 */
export async function mendInPlace(
  db: Kysely<Tables>,
  { donor, at, keptAs, onProgress }: MendOptions,
): Promise<Mended> {
  const copied = nothingCopied();
  const aside = new Aside(keptAs);
  try {
    const ids = await documentIds(db);
    const hashes = (await db.selectFrom('attachments').select('hash').execute()).map(({ hash }) => hash);
    let done = 0;
    const next = () => onProgress(++done, ids.length + hashes.length);
    for (const id of ids) {
      await db.transaction().execute((trx) => mendDocument(trx, id, { donor, aside, copied }));
      next();
    }
    for (const hash of hashes) {
      await db.transaction().execute((trx) => mendPicture(trx, hash, { donor, aside, copied }));
      next();
    }
    await mendIdentity(db, donor, at);
  } finally {
    aside.close();
  }
  return { mended: copied.mended, leftOut: copied.leftOut };
}

interface Mending {
  donor: Donor;
  aside: Aside;
  copied: Copied;
}

/** Rows that are about to be replaced, on the disk before they are. */
class Aside {
  private readonly file: number;

  constructor(path: string) {
    this.file = openSync(path, 'w', 0o600);
  }

  keep(table: keyof Tables, rows: readonly object[]): void {
    for (const row of rows) writeSync(this.file, `${JSON.stringify({ table, row })}\n`);
    fsyncSync(this.file);
  }

  close(): void {
    closeSync(this.file);
  }
}

/** Those on the shelf, and those of which only changes are left. */
async function documentIds(db: Kysely<Tables>): Promise<string[]> {
  const found = await Promise.all([
    db.selectFrom('documents').select('id').execute(),
    db.selectFrom('operations').select('document as id').distinct().execute(),
  ]);
  return [...new Set(found.flat().map(({ id }) => id))].sort();
}

async function mendDocument(trx: Transaction<Tables>, id: string, mending: Mending): Promise<void> {
  const { copied } = mending;
  // Who edits this document waits here until it is mended.
  const row = await trx
    .selectFrom('documents')
    .where('id', '=', id)
    .selectAll()
    .forUpdate()
    .executeTakeFirst();
  if (row?.kind === arrivingKind) return;
  const read = row && (await readDocument(trx, row));
  if (read?.faults.length === 0) return;
  const { best, what } = read
    ? await bestOf(read, mending.donor)
    : { best: await mending.donor.document(id), what: 'it was not on the shelf any more' };
  const note: DamageNote = { id, title: read?.title ?? '', what };
  if (!best || findingOf({ ...best, history: renumbered(best.history).history })) {
    copied.leftOut.push(note);
    return;
  }
  await replaceDocument(trx, best, mending);
  copied.mended.push(note);
}

const tablesOfDocument = ['operations', 'revisions', 'snapshots'] as const;

async function replaceDocument(
  trx: Transaction<Tables>,
  best: WholeDocument,
  { aside, copied }: Mending,
): Promise<void> {
  const { id } = best;
  aside.keep('documents', await trx.selectFrom('documents').where('id', '=', id).selectAll().execute());
  for (const table of tablesOfDocument) {
    aside.keep(table, await trx.selectFrom(table).where('document', '=', id).selectAll().execute());
    await trx.deleteFrom(table).where('document', '=', id).execute();
  }
  await trx.deleteFrom('documents').where('id', '=', id).execute();
  await store(trx, best, copied);
}

async function mendPicture(trx: Transaction<Tables>, hash: string, mending: Mending): Promise<void> {
  if (await ownAttachment(trx, hash)) return;
  const { donor, aside, copied } = mending;
  const note: DamageNote = { id: hash, title: 'a picture', what: 'it is not what was stored' };
  const found = await donor.attachment(hash);
  if (!found) {
    copied.leftOut.push(note);
    return;
  }
  const rows = trx.selectFrom('attachments').where('hash', '=', hash).selectAll();
  const kept = await rows.execute();
  aside.keep(
    'attachments',
    kept.map((row) => ({ ...row, bytes: Buffer.from(row.bytes).toString('base64') })),
  );
  await trx.deleteFrom('attachments').where('hash', '=', hash).execute();
  await trx.insertInto('attachments').values(attachmentRow(found, found.addedAt)).execute();
  copied.mended.push(note);
}

/** The time tells every page to compare what it has with what is there now. */
async function mendIdentity(db: Kysely<Tables>, donor: Donor, at: string): Promise<void> {
  const own = await db.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
  const record = identityHolds(own) ? own.record : ((await donor.identity()) ?? own.record);
  const identity = { record, restored_at: at };
  await db
    .updateTable('identity')
    .set({ ...identity, seal: identitySeal(identity) })
    .execute();
}
