import type { Generated } from 'kysely';

/** The database as it stands after the last migration. Flags are 0 and 1, values JSON, instants ISO 8601 in UTC. */
export interface Tables {
  documents: DocumentsTable;
  operations: OperationsTable;
  attachments: AttachmentsTable;
  revisions: RevisionsTable;
  identity: IdentityTable;
  sessions: SessionsTable;
  jobs: JobsTable;
  pairing_codes: PairingCodesTable;
  snapshots: SnapshotsTable;
}

/** `title` to `search` repeat what the operations say, so that a list needs no replay. */
export interface DocumentsTable {
  id: string;
  kind: string;
  title: string;
  customer: string;
  rod_kind: string;
  line_weight: string;
  search: string;
  /** CardFacts as JSON, and the blank's series as it is compared. */
  card: string;
  series: string;
  demo: number;
  gone: Generated<number>;
  created_at: string;
  updated_at: string;
  last_seq: number;
  clock: number;
  /** Link of the last operation; what vouches for the columns an edit leaves alone; and for the row. */
  head: Generated<string>;
  facts: Generated<string>;
  seal: Generated<string>;
}

/** Appended, never altered. */
export interface OperationsTable {
  document: string;
  seq: number;
  id: string;
  device: string;
  clock: number;
  gesture: string;
  collection: string;
  row_id: string;
  field: string;
  old_value: string;
  new_value: string;
  written_at: string;
  received_at: string;
  /** Checksum over the row and the link before it; see `vouch/seals`. */
  link: Generated<string>;
}

/** One row. */
export interface IdentityTable {
  record: string;
  /** When a backup was last put in the place of the record; empty when never. */
  restored_at: Generated<string>;
  seal: Generated<string>;
}

export interface AttachmentsTable {
  /** SHA-256 of the bytes. */
  hash: string;
  type: string;
  size: number;
  bytes: Uint8Array;
  added_at: string;
  seal: Generated<string>;
}

export interface RevisionsTable {
  document: string;
  revision: string;
  seq: number;
  made_at: string;
  engine_version: string;
  frozen_values: string;
  seal: Generated<string>;
}

export interface SessionsTable {
  id: string;
  name: string;
  paired_at: string;
  /** SHA-256 of the device's secret. */
  hash: string;
}

/** Long computations; no part of the record. */
export interface JobsTable {
  id: string;
  kind: string;
  input: string;
  state: string;
  done: Generated<number>;
  total: Generated<number>;
  attempts: Generated<number>;
  result: string | null;
  message: Generated<string>;
  created_at: string;
  updated_at: string;
}

export interface PairingCodesTable {
  /** SHA-256 of the code. */
  hash: string;
  ends_at: string;
  tries_left: number;
}

/** Derived: what the operations up to `seq` come down to. Thrown away and made anew wherever it does not agree. */
export interface SnapshotsTable {
  document: string;
  seq: number;
  /** Of the operation it stands at. */
  link: string;
  /** Stored operations as JSON. */
  standing: string;
  seal: string;
}
