import type { Selectable } from 'kysely';
import type { CardFacts, DocumentSummary, Revision } from '../record/api.ts';
import type { Operation, StoredOperation } from '../record/operation.ts';
import type { DocumentKind, FieldValue } from '../record/schema.ts';
import type { DocumentsTable, OperationsTable, RevisionsTable } from './tables.ts';

export function operationRow(
  document: string,
  seq: number,
  { id, device, clock, gesture, path, old, value, at }: Operation,
  receivedAt: string,
): OperationsTable {
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

export function operationOf(row: Selectable<OperationsTable>): StoredOperation {
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

export function summaryOf(row: Selectable<DocumentsTable>): DocumentSummary {
  return {
    id: row.id,
    kind: row.kind as DocumentKind,
    title: row.title,
    customer: row.customer,
    rodKind: row.rod_kind,
    lineWeight: row.line_weight,
    demo: row.demo === 1,
    card: JSON.parse(row.card) as CardFacts,
    gone: row.gone === 1,
    createdAt: row.created_at,
    updatedAt: row.updated_at,
    lastSeq: row.last_seq,
  };
}

export function revisionOf(row: Omit<Selectable<RevisionsTable>, 'frozen_values'>): Revision {
  return {
    document: row.document,
    revision: row.revision,
    seq: row.seq,
    madeAt: row.made_at,
    engineVersion: row.engine_version,
  };
}
