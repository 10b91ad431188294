import { setImmediate as breathe } from 'node:timers/promises';
import { type Kysely, sql } from 'kysely';
import type { DamageNote } from '../../record/record-api.ts';
import { DamagedError } from '../errors.ts';
import { unreadable } from '../sql-operations.ts';
import type { Tables } from '../tables.ts';
import { attachmentNoteHolds, believedAttachment } from './believed.ts';
import { readDocument } from './read-document.ts';
import { arrivingKind, identityHolds } from './seals.ts';

/** What a whole reading of the record found. */
export interface RecordVerdict {
  documents: number;
  operations: number;
  attachments: number;
  /** Empty where all is what was stored. */
  damaged: DamageNote[];
}

export interface CheckOptions {
  onProgress?(done: number, total: number): void;
  /** Of a SQLite file: its own structure is looked at as well. */
  structure?: boolean;
  closing?: AbortSignal;
}

/** Reads every document, change, picture and printed state, and holds each against what vouches for it. */
export async function checkRecord(db: Kysely<Tables>, options: CheckOptions = {}): Promise<RecordVerdict> {
  const verdict: RecordVerdict = { documents: 0, operations: 0, attachments: 0, damaged: [] };
  try {
    await checkAll(db, verdict, options);
  } catch (error) {
    if (!unreadable(error)) throw error;
    verdict.damaged.push({ id: 'file', title: 'the file itself', what: (error as Error).message });
  }
  return verdict;
}

async function checkAll(
  db: Kysely<Tables>,
  verdict: RecordVerdict,
  { onProgress = () => undefined, structure = false, closing }: CheckOptions,
): Promise<void> {
  if (structure) await checkStructure(db, verdict);
  const identity = await db.selectFrom('identity').selectAll().executeTakeFirst();
  if (!identity || !identityHolds(identity))
    verdict.damaged.push({ id: 'record', title: 'the record’s own name', what: notStored });
  for (const id of await orphans(db))
    verdict.damaged.push({ id, title: '', what: 'it is not on the shelf any more' });
  const rows = await db.selectFrom('documents').selectAll().execute();
  const documents = rows.filter(({ kind }) => kind !== arrivingKind);
  const hashes = (await db.selectFrom('attachments').select('hash').execute()).map(({ hash }) => hash);
  const total = documents.length + hashes.length;
  let done = 0;
  const next = async () => {
    onProgress(++done, total);
    await breathe();
    closing?.throwIfAborted();
  };
  for (const row of documents) {
    const { id, title, whole, faults } = await readDocument(db, row);
    verdict.documents += 1;
    verdict.operations += whole?.history.length ?? 0;
    if (faults.length > 0) verdict.damaged.push({ id, title, what: faults.join('; ') });
    await next();
  }
  for (const hash of hashes) {
    verdict.attachments += 1;
    if (!(await pictureHolds(db, hash)))
      verdict.damaged.push({ id: hash, title: 'a picture', what: notStored });
    await next();
  }
}

const notStored = 'it is not what was stored';

async function checkStructure(db: Kysely<Tables>, verdict: RecordVerdict): Promise<void> {
  const { rows } = await sql<{ integrity_check: string }>`PRAGMA integrity_check(1)`.execute(db);
  const [{ integrity_check: said }] = rows;
  if (said !== 'ok') verdict.damaged.push({ id: 'file', title: 'the file itself', what: said });
}

/** Documents that have changes but no row. */
async function orphans(db: Kysely<Tables>): Promise<string[]> {
  const found = await db
    .selectFrom('operations')
    .where('document', 'not in', db.selectFrom('documents').select('id'))
    .select('document')
    .distinct()
    .execute();
  return found.map(({ document }) => String(document));
}

async function pictureHolds(db: Kysely<Tables>, hash: string): Promise<boolean> {
  try {
    const row = await db
      .selectFrom('attachments')
      .where('hash', '=', hash)
      .selectAll()
      .executeTakeFirstOrThrow();
    believedAttachment(row);
    return attachmentNoteHolds(row);
  } catch (error) {
    if (unreadable(error) || error instanceof DamagedError) return false;
    throw error;
  }
}
