import type { Selectable } from 'kysely';
import type { CardFacts, DocumentSummary, Revision, RevisionAnswer } from '../record/api.ts';
import type { Operation, StoredOperation } from '../record/operation.ts';
import type { DocumentKind, FieldValue } from '../record/schema.ts';
import type { StoredAttachment } from './repository.ts';
import type { AttachmentsTable, RevisionsTable } from './tables.ts';
import {
  attachmentSeal,
  type DocumentRow,
  documentHolds,
  type OperationRow,
  revisionSeal,
} from './vouch/seals.ts';

export function operationRow(
  document: string,
  seq: number,
  { id, device, clock, gesture, path, old, value, at }: Operation,
  receivedAt: string,
): Omit<OperationRow, 'link'> {
  const [collection, row_id, field] = path;
  const [old_value, new_value] = [JSON.stringify(old), JSON.stringify(value)];
  const place = { document, seq, id, device, clock, gesture, collection, row_id, field };
  return { ...place, old_value, new_value, written_at: at, received_at: receivedAt };
}

/** An operation as it comes back from the database. */
export function storedOperation(
  { id, device, clock, gesture, path, old, value, at }: Operation,
  seq: number,
  receivedAt: string,
): StoredOperation {
  return { seq, id, device, clock, gesture, path, old, value, at, receivedAt };
}

export function operationOf(row: Omit<OperationRow, 'link'>): StoredOperation {
  return {
    seq: row.seq,
    id: row.id,
    device: row.device,
    clock: row.clock,
    gesture: row.gesture,
    path: [row.collection, row.row_id, row.field],
    old: JSON.parse(row.old_value) as FieldValue,
    value: JSON.parse(row.new_value) as FieldValue,
    at: row.written_at,
    receivedAt: row.received_at,
  };
}

/** A row that does not hold is marked, and what cannot be read off it is left empty. */
export function summaryOf(row: DocumentRow): DocumentSummary {
  const holds = documentHolds(row);
  return {
    id: row.id,
    kind: row.kind as DocumentKind,
    title: row.title,
    customer: row.customer,
    rodKind: row.rod_kind,
    lineWeight: row.line_weight,
    demo: row.demo === 1,
    card: holds ? (JSON.parse(row.card) as CardFacts) : {},
    gone: row.gone === 1,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
    lastSeq: row.last_seq,
    ...(holds ? {} : { damaged: true as const }),
  };
}

export function revisionOf(row: Omit<Selectable<RevisionsTable>, 'frozen_values' | 'seal'>): Revision {
  return {
    document: row.document,
    revision: row.revision,
    seq: row.seq,
    madeAt: row.made_at,
    engineVersion: row.engine_version,
  };
}

export function revisionRow(revision: RevisionAnswer): Selectable<RevisionsTable> {
  const row = {
    document: revision.document,
    revision: revision.revision,
    seq: revision.seq,
    made_at: revision.madeAt,
    engine_version: revision.engineVersion,
    frozen_values: JSON.stringify(revision.values),
  };
  return { ...row, seal: revisionSeal(row) };
}

export function attachmentRow(
  { hash, type, bytes }: StoredAttachment,
  addedAt: string,
): Selectable<AttachmentsTable> {
  const row = { hash, type, size: bytes.length, added_at: addedAt };
  return { ...row, bytes, seal: attachmentSeal(row) };
}

export function revisionAnswer(row: Selectable<RevisionsTable>): RevisionAnswer {
  return { ...revisionOf(row), values: JSON.parse(row.frozen_values) as Record<string, FieldValue> };
}
