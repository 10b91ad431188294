import { hash } from 'node:crypto';
import type { Selectable } from 'kysely';
import type {
  AttachmentsTable,
  DocumentsTable,
  IdentityTable,
  OperationsTable,
  RevisionsTable,
  SnapshotsTable,
} from '../tables.ts';

/**
 * What lets a row be believed when it is read again. Every operation carries a link: a checksum over itself and the
 * link before it in its document. The document carries the last link as its `head`, so a missing end shows too, and
 * a seal over its own columns; attachments, revisions and the record's name carry one likewise. They find what a
 * disk, a careless copy or a strange program did; they are no defence against who computes them anew.
 */
export const sealLetters = 32;

/** Kind of a document whose history is not all there yet; nothing of it is shown, checked or backed up. */
export const arrivingKind = 'arriving';

/** Before the first operation of a document. */
export const noLink = '';

export type OperationRow = Selectable<OperationsTable>;
export type DocumentRow = Selectable<DocumentsTable>;

/** Of an operation's own content; where it stands is the link's part. */
export function contentDigest(row: Omit<OperationRow, 'link' | 'seq'>): string {
  const { document, id, device, clock, gesture, collection, row_id, field } = row;
  const { old_value, new_value, written_at, received_at } = row;
  const place = [document, id, device, clock, gesture, collection, row_id, field];
  return digest(JSON.stringify([...place, old_value, new_value, written_at, received_at]));
}

/** In plain letters, so that PostgreSQL can make it too (`append-at-once`). */
export function linkOf(previous: string, seq: number, content: string): string {
  return digest(`${previous} ${seq} ${content}`);
}

/** The rows with their links, after the link of the operation before them. */
export function linked(rows: readonly Omit<OperationRow, 'link'>[], previous: string): OperationRow[] {
  let link = previous;
  return rows.map((row) => {
    link = linkOf(link, row.seq, contentDigest(row));
    return { ...row, link };
  });
}

/** Of what an edit that the list does not show leaves alone. */
export function factsDigest(row: Omit<DocumentRow, 'facts' | 'seal' | 'head'>): string {
  const { id, kind, title, customer, rod_kind, line_weight, search, card, series, demo, gone, created_at } =
    row;
  const texts = [id, kind, title, customer, rod_kind, line_weight, search, card, series];
  return digest(JSON.stringify([...texts, demo, gone, created_at]));
}

/** In plain letters as well. */
export function documentSeal(facts: string, row: Omit<DocumentRow, 'facts' | 'seal'>): string {
  return digest(`${facts} ${row.updated_at} ${row.last_seq} ${row.clock} ${row.head}`);
}

/** The row with what vouches for it. */
export function sealedDocument<T extends Omit<DocumentRow, 'facts' | 'seal'>>(
  row: T,
): T & { facts: string; seal: string } {
  const facts = factsDigest(row);
  return { ...row, facts, seal: documentSeal(facts, row) };
}

export function documentHolds(row: DocumentRow): boolean {
  return row.seal === documentSeal(row.facts, row) && row.facts === factsDigest(row);
}

export function attachmentSeal(row: Omit<Selectable<AttachmentsTable>, 'bytes' | 'seal'>): string {
  return digest(JSON.stringify([row.hash, row.type, row.size, row.added_at]));
}

export function revisionSeal(row: Omit<Selectable<RevisionsTable>, 'seal'>): string {
  const { document, revision, seq, made_at, engine_version, frozen_values } = row;
  return digest(JSON.stringify([document, revision, seq, made_at, engine_version, frozen_values]));
}

export function snapshotSeal(row: Omit<Selectable<SnapshotsTable>, 'seal'>): string {
  return digest(JSON.stringify([row.document, row.seq, row.link, row.standing]));
}

export function identitySeal(row: { record: string; restored_at: string }): string {
  return digest(JSON.stringify([row.record, row.restored_at]));
}

export function identityHolds(row: Selectable<IdentityTable>): boolean {
  return row.seal === identitySeal(row);
}

function digest(text: string): string {
  return hash('sha256', text, 'hex').slice(0, sealLetters);
}
