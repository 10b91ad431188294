/**
 * The messages between the page and the server, under /api. Answers that are not 2xx carry a Refusal.
 *
 *   GET    /api/documents?search=&series=&kind=&gone=&limit=&offset=   DocumentList
 *   POST   /api/documents                CreateRequest       -> DocumentSummary (201)
 *   GET    /api/documents/:id                                -> DocumentAnswer
 *   POST   /api/documents/:id/operations AppendRequest       -> AppendAnswer, once it is on disk
 *   GET    /api/documents/:id/opening                        -> OpeningAnswer: what a page opens a document with
 *   GET    /api/documents/:id/operations?after=&limit=       -> OperationsAnswer
 *   GET    /api/documents/:id/after/:seq                     -> DocumentAnswer: as its first operations left it
 *   POST   /api/documents/:id/copy                           -> DocumentSummary (201), without the demo mark
 *   POST   /api/documents/:id/again                          -> DocumentSummary (201), without what was measured
 *   POST   /api/documents/:id/put-away | bring-back          -> DocumentSummary
 *   POST   /api/documents/:id/erase      EraseRequest        -> DocumentSummary (this computer only): for good, history too
 *   GET    /api/documents/:id/file?attachments=              -> the build file
 *   POST   /api/files                    a build file        -> ImportAnswer (201)
 *   POST   /api/documents/:id/revisions  FreezeRequest       -> Revision (201)
 *   GET    /api/documents/:id/revisions, /revisions/:revision
 *   GET    /api/shop/files                                   -> the whole shop as plain files, a .zip
 *   GET    /api/shop                                         -> DocumentSummary of the shop's own document
 *   POST   /api/attachments              bytes               -> AttachmentAnswer (201)
 *   GET    /api/attachments/:hash                            -> bytes
 *   GET    /api/events?after=ID:SEQ:LAST (repeatable)        -> server-sent events named `record`: FeedOpening, then
 *          `operations`: FeedMessage; LAST, which may be left out, is the id of the operation of that number
 *   POST   /api/demo/reset                                   -> DocumentSummary
 *   GET    /api/demos                                        -> { demos: DemoOffered[] }, beside the first one
 *   POST   /api/demos/:id                                    -> DocumentSummary, put on the shelf or brought back
 *   GET    /api/backups                                      -> { backups: BackupNote[] }, the newest first
 *   POST   /api/backups                                      -> BackupNote (201), made now
 *   GET    /api/backups/:name                                -> the archive
 *   GET    /api/shop/import                                  -> ShopImportStanding
 *   POST   /api/shop/import              the archive         -> ShopImportAnswer (this computer only); open pages load anew
 *   POST   /api/backups/:name/restore                        -> { madeAt, keptAs, otherwise } (this computer only); open pages load anew
 *   GET    /api/record                                       -> RecordStanding
 *   POST   /api/record/check                                 -> RecordStanding, once all of it was read
 *   POST   /api/record/repair                                -> RepairAnswer (this computer only); open pages load anew
 *   POST   /api/shop/import/cancel                           -> ShopImportStanding (this computer only)
 *   GET    /api/works, POST /api/works/:id/cancel             -> { works: WorkNote[] }, what is under way
 *   GET    /api/proofs                                       -> ProofsAnswer, of all builds but the demo
 *   GET    /api/jobs                                         -> { jobs: JobStatus[] }, the newest first
 *   POST   /api/jobs                     JobRequest          -> JobStatus (202)
 *   GET    /api/jobs/:id, POST /api/jobs/:id/cancel          -> JobStatus
 *   POST   /api/pair                     PairRequest         -> a session cookie (201)
 *   GET    /api/sharing                                      -> SharingAnswer (this computer only)
 *   POST   /api/sharing/open             { open }            -> SharingAnswer (this computer only): lets phones in, or none
 *   POST   /api/sharing/code                                 -> { code, expiresAt } (201; this computer only)
 *   POST   /api/sharing/sessions/:id/end                     -> { sessions } (this computer only)
 *   GET    /api/info                                         -> ServerInfo
 */
import type { Cell, Change, Objection, Operation, StoredOperation } from './operation.ts';
import type { Proof } from './read-proofs.ts';
import type { DocumentKind, FieldValue } from './schema.ts';
import type { Standing } from './standing.ts';

/** An invented build that came with the program and is put on the shelf when it is asked for. */
export interface DemoOffered {
  id: string;
  title: string;
  note: string;
  /** On the shelf already. */
  shown: boolean;
}

export interface DocumentSummary {
  id: string;
  kind: DocumentKind;
  title: string;
  customer: string;
  rodKind: string;
  lineWeight: string;
  demo: boolean;
  /** What else its card on the shelf says. */
  card: CardFacts;
  /** Put away by the builder; still there. */
  gone: boolean;
  createdAt: string;
  updatedAt: string;
  /** How many operations it has. */
  lastSeq: number;
  /** What stands here is not what was stored: disk or file were damaged. */
  damaged?: true;
}

/** Values a card shows that no list is sorted by; left out where they are empty. */
export interface CardFacts {
  tags?: string[];
  /** What is written on the blank, and the series it is one of. */
  label?: string;
  series?: string;
  /** The build that this one repeats on a new blank, or was copied from. */
  againFrom?: string;
  copyOf?: string;
  /** Of a repair. */
  broken?: string;
  build?: string;
  promisedFor?: string;
  doneAt?: string;
  handedOverAt?: string;
}

export interface DocumentList {
  documents: DocumentSummary[];
  /** How many match, beyond the ones sent. */
  total: number;
}

/** What was predicted and seen, build by build; builds without a proof are left out. */
export interface ProofsAnswer {
  builds: { id: string; title: string; proofs: Proof[] }[];
}

export interface CreateRequest {
  kind: 'build' | 'ticket';
  /** First values, such as the title. */
  changes?: Change[];
}

export interface DocumentAnswer {
  document: DocumentSummary;
  /** Path key and cell. */
  cells: [string, Cell][];
  clock: number;
  lastSeq: number;
}

export interface AppendRequest {
  operations: Operation[];
}
export interface AppendAnswer {
  accepted: { id: string; seq: number }[];
  lastSeq: number;
}

/** Operations in order of `seq`; `more` says that another request with a later `after` is needed. */
export interface OperationsAnswer {
  /** Which record (database) answers: documents of two may have the same id. */
  record: string;
  document: DocumentSummary;
  operations: StoredOperation[];
  lastSeq: number;
  more: boolean;
  /** What of these operations cannot be read any more, and what to do; absent where all is good. */
  damage?: string;
}

/** A document's newest operations, and what those before them come down to. */
export interface OpeningAnswer extends OperationsAnswer {
  standing: Standing;
}

/** Opens every feed, as event `record`. A page that has heard another one before shows what is no more. */
export interface FeedOpening {
  record: string;
  /** When a backup was last put in the place of the record; empty when never. */
  restoredAt: string;
  /** Documents of which the reader has had what is not here any more. */
  behind?: string[];
}

export interface FeedMessage {
  document: string;
  operations: StoredOperation[];
}

export interface ImportAnswer {
  document: DocumentSummary;
  /** Attachments the file names but does not hold, by hash. */
  attachmentsMissing: string[];
  /** What was taken otherwise than it stands in the file, in sentences. */
  notes: string[];
}

export interface EraseRequest {
  what: 'customer' | 'picture';
  /** Of a picture: its row among the attachments. */
  row?: string;
}

export interface FreezeRequest {
  engineVersion: string;
}
export interface Revision {
  document: string;
  /** Short hash of the frozen values; the same values give the same revision. */
  revision: string;
  seq: number;
  madeAt: string;
  engineVersion: string;
}
export interface RevisionAnswer extends Revision {
  values: Record<string, FieldValue>;
}

export interface AttachmentAnswer {
  /** Of the bytes as kept, which are those sent without what a camera writes about itself and the place. */
  hash: string;
  type: string;
  size: number;
  /** Of a picture, as displayed. */
  widthPx?: number;
  heightPx?: number;
}

export interface ServerInfo {
  app: 'fairbend';
  /** As in OperationsAnswer. */
  record: string;
  version: string;
  dataFolder: string;
  database: string;
  /** Whether the page may end the program. */
  mayEnd: boolean;
  demo: string | null;
}

export interface Refusal {
  /** One sentence for a person. */
  message: string;
  findings: Objection[];
}
