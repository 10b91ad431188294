import { setImmediate as breathe } from 'node:timers/promises';
import type { Kysely, Transaction } from 'kysely';
import type { DamageNote } from '../../record/record-api.ts';
import { renumbered } from '../../record/renumber.ts';
import { DamagedError } from '../errors.ts';
import type { WholeDocument } from '../repository.ts';
import { unreadable } from '../sql-operations.ts';
import { attachmentRow } from '../sql-rows.ts';
import { addDocument } from '../sql-whole.ts';
import type { Tables } from '../tables.ts';
import { attachmentNoteHolds, believedAttachment } from './believed.ts';
import { bestOf, type Donor } from './best-of.ts';
import { findingOf } from './check-whole.ts';
import { readDocument } from './read-document.ts';
import { arrivingKind, type DocumentRow, identityHolds, identitySeal } from './seals.ts';

/** What of it was not taken as it stood, in sentences for the builder. */
export function copiedOtherwise({ leftOut, renumbered: counted }: Copied): string[] {
  const said = leftOut.map(({ id, title, what }) => `${title || id} was left out: ${what}.`);
  if (counted.length > 0)
    said.push(
      `The counter of ${counted.length} documents had run off; their changes were counted anew, in the same order.`,
    );
  return said;
}

export interface Copied {
  documents: number;
  operations: number;
  attachments: number;
  /** Taken wholly or in part from the donor, or read off what was good; `what` says what of it is missing. */
  mended: DamageNote[];
  /** Not in the copy. */
  leftOut: DamageNote[];
  /** Documents whose clock had run off. */
  renumbered: string[];
}

export function nothingCopied(): Copied {
  return { documents: 0, operations: 0, attachments: 0, mended: [], leftOut: [], renumbered: [] };
}

export interface CopyOptions {
  donor?: Donor;
  restoredAt?: string;
  onProgress?(done: number, total: number): void;
}

/**
 * Copies a record row by row into an empty one of the present form: nothing comes along but documents, their changes,
 * pictures and printed states, each checked as if it were written now. What is damaged is taken from the donor.
 */
export async function copyRecord(
  source: Kysely<Tables>,
  target: Transaction<Tables>,
  { donor, restoredAt, onProgress = () => undefined }: CopyOptions = {},
): Promise<Copied> {
  const copied = nothingCopied();
  await copyIdentity(source, target, donor, restoredAt);
  const missing = new Set(await idsOfOperations(source));
  const seen = new Set<string>();
  const rows = await documentRows(source);
  for (const [index, row] of rows.entries()) {
    onProgress(index, rows.length);
    if (seen.has(row.id)) continue;
    seen.add(row.id);
    missing.delete(row.id);
    if (row.kind === arrivingKind) continue;
    await copyDocument(source, target, row, copied, donor);
    await breathe();
  }
  for (const id of missing) {
    const found = await donor?.document(id);
    if (found) await store(target, found, copied);
    const damage = { id: String(id), title: '', what: 'it was not on the shelf any more' };
    (found ? copied.mended : copied.leftOut).push(damage);
  }
  await copyAttachments(source, target, copied, donor);
  return copied;
}

async function copyDocument(
  source: Kysely<Tables>,
  target: Transaction<Tables>,
  row: DocumentRow,
  copied: Copied,
  donor: Donor | undefined,
): Promise<void> {
  const read = await readDocument(source, row);
  const { id, title, whole } = read;
  if (whole && read.faults.length === 0) {
    const finding = await store(target, whole, copied);
    if (finding) copied.leftOut.push({ id, title, what: finding });
    return;
  }
  const { best, what } = await bestOf(read, donor);
  if (!best) {
    copied.leftOut.push({ id, title, what });
    return;
  }
  const finding = await store(target, best, copied);
  if (finding) copied.leftOut.push({ id, title, what: finding });
  else copied.mended.push({ id, title, what });
}

/** Answers why it cannot be stored, in words. */
export async function store(
  target: Transaction<Tables>,
  whole: WholeDocument,
  copied: Copied,
): Promise<string | undefined> {
  const { history, changed } = renumbered(whole.history);
  const finding = findingOf({ ...whole, history });
  if (finding) return finding;
  await addDocument(target, { ...whole, history });
  if (changed) copied.renumbered.push(whole.id);
  copied.documents += 1;
  copied.operations += history.length;
  return undefined;
}

async function copyAttachments(
  source: Kysely<Tables>,
  target: Transaction<Tables>,
  copied: Copied,
  donor: Donor | undefined,
): Promise<void> {
  const hashes = await source.selectFrom('attachments').select('hash').execute();
  for (const hash of new Set(hashes.map((row) => row.hash))) {
    const own = await ownAttachment(source, hash);
    const found = own ?? (await donor?.attachment(hash));
    if (found) {
      await target.insertInto('attachments').values(attachmentRow(found, found.addedAt)).execute();
      copied.attachments += 1;
    }
    if (own) continue;
    const damage = { id: String(hash), title: 'a picture', what: 'it is not what was stored' };
    (found ? copied.mended : copied.leftOut).push(damage);
    await breathe();
  }
}

export async function ownAttachment(source: Kysely<Tables>, hash: string) {
  try {
    const row = await source
      .selectFrom('attachments')
      .where('hash', '=', hash)
      .selectAll()
      .executeTakeFirstOrThrow();
    if (!attachmentNoteHolds(row)) return undefined;
    return { ...believedAttachment(row), addedAt: row.added_at };
  } catch (error) {
    if (unreadable(error) || error instanceof DamagedError) return undefined;
    throw error;
  }
}

async function copyIdentity(
  source: Kysely<Tables>,
  target: Transaction<Tables>,
  donor: Donor | undefined,
  restoredAt: string | undefined,
): Promise<void> {
  const row = await source.selectFrom('identity').selectAll().executeTakeFirst();
  const own = row && identityHolds(row) ? row : undefined;
  const fresh = await target.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
  const identity = {
    record: own?.record ?? (await donor?.identity()) ?? fresh.record,
    restored_at: restoredAt ?? own?.restored_at ?? '',
  };
  await target
    .updateTable('identity')
    .set({ ...identity, seal: identitySeal(identity) })
    .execute();
}

/** One query where it can be; a page that cannot be read costs its own rows alone. */
async function documentRows(source: Kysely<Tables>): Promise<DocumentRow[]> {
  try {
    return await source.selectFrom('documents').selectAll().execute();
  } catch (error) {
    if (!unreadable(error)) throw error;
  }
  const rows: DocumentRow[] = [];
  for (const id of await idsOfOperations(source)) {
    const row = await source
      .selectFrom('documents')
      .where('id', '=', id)
      .selectAll()
      .executeTakeFirst()
      .catch((error: unknown) => {
        if (!unreadable(error)) throw error;
        return undefined;
      });
    if (row) rows.push(row);
  }
  return rows;
}

async function idsOfOperations(source: Kysely<Tables>): Promise<string[]> {
  try {
    const found = await source.selectFrom('operations').select('document').distinct().execute();
    return found.map(({ document }) => document);
  } catch (error) {
    if (!unreadable(error)) throw error;
    return [];
  }
}
