import type { DocumentList, DocumentSummary, FeedOpening, Revision, RevisionAnswer } from '../record/api.ts';
import type { Operation, Path, StoredOperation } from '../record/operation.ts';
import type { DocumentKind } from '../record/schema.ts';
import type { Standing } from '../record/standing.ts';

export interface ListQuery {
  kind: DocumentKind;
  search: string;
  gone: boolean;
  /** Of this series alone, as `seriesName` makes it. */
  series?: string;
  limit: number;
  offset: number;
}

export interface NewDocument {
  id: string;
  kind: DocumentKind;
  at: string;
  operations: readonly Operation[];
}

/** Of what takes long: how far it is, and the word to give it up. */
export interface Pace {
  signal?: AbortSignal;
  onProgress?(done: number, total: number): void;
}

export interface StoredAttachment {
  hash: string;
  type: string;
  bytes: Uint8Array;
}

/** A document with all its history, as it stood in another record. */
export interface WholeDocument {
  id: string;
  kind: DocumentKind;
  gone: boolean;
  createdAt: string;
  updatedAt: string;
  history: readonly StoredOperation[];
  revisions: readonly RevisionAnswer[];
}

/** One after the other, as they are made. */
export type Pieces<T> = Iterable<T> | AsyncIterable<T>;

export interface Appended {
  accepted: { id: string; seq: number }[];
  /** What was new, in order; of a repeated batch nothing. */
  stored: StoredOperation[];
  lastSeq: number;
}

/** Where the record is kept. Every write is on disk when its promise resolves. */
export interface Repository {
  list(query: ListQuery): Promise<DocumentList>;
  find(document: string): Promise<DocumentSummary | undefined>;
  /** All of it or nothing. @throws ConflictError when the id is taken */
  create(document: NewDocument, pace?: Pace): Promise<DocumentSummary>;
  /** All of them or none; the ones already there are acknowledged again. @throws NotFoundError, ConflictError */
  append(document: string, operations: readonly Operation[], receivedAt: string): Promise<Appended>;
  setGone(document: string, gone: boolean): Promise<DocumentSummary>;
  /** In order of seq, at most `limit`. */
  operationsAfter(document: string, after: number, limit: number): Promise<StoredOperation[]>;
  /** What a long history comes down to, where that is kept and agrees with it. */
  snapshot(document: string): Promise<Standing | undefined>;
  /** Keeps what the history up to `seq` comes down to; `read` reads and thins it. */
  makeSnapshot(document: string, seq: number, read: () => Promise<Standing>): Promise<Standing>;
  /** Whether it was not there before. */
  addAttachment(attachment: StoredAttachment, at: string): Promise<boolean>;
  attachment(hash: string): Promise<StoredAttachment | undefined>;
  /** Takes those of these pictures out again that no document names; answers which. */
  dropUnused(hashes: readonly string[]): Promise<string[]>;
  /** For good, out of history and printed states too; answers the pictures that are gone. */
  erase(document: string, paths: readonly Path[]): Promise<string[]>;
  addRevision(revision: RevisionAnswer): Promise<Revision>;
  revisions(document: string): Promise<Revision[]>;
  revision(document: string, revision: string): Promise<RevisionAnswer | undefined>;
  /** Of every document, whatever its kind, in order. */
  documentIds(): Promise<string[]>;
  /** Those that ever had a value in this collection. */
  documentsWith(collection: string): Promise<string[]>;
  attachmentNotes(): Promise<{ hash: string; type: string; addedAt: string }[]>;
  /** Into an empty record, all of it or nothing. @throws ConflictError where it is not empty */
  addWhole(
    documents: Pieces<WholeDocument>,
    attachments: Pieces<StoredAttachment & { addedAt: string }>,
  ): Promise<void>;
  /** Bytes it takes, room that is free again left out. */
  size(): Promise<number>;
  /** Which record this is; another database has another. */
  identity(): Promise<string>;
  /** As `identity`, and when a backup last took its place. */
  opening(): Promise<FeedOpening>;
  close(): Promise<void>;
}
