import { type Kysely, sql } from 'kysely';
import type { DocumentList, DocumentSummary, FeedOpening, Revision, RevisionAnswer } from '../record/api.ts';
import type { Operation, Path, StoredOperation } from '../record/operation.ts';
import type { Standing } from '../record/standing.ts';
import { dropUnusedIn, eraseIn } from './erase.ts';
import { DamagedError, documentNotFound } from './errors.ts';
import type {
  Appended,
  ListQuery,
  NewDocument,
  Pace,
  Pieces,
  Repository,
  StoredAttachment,
  WholeDocument,
} from './repository.ts';
import { appendIn, setGoneIn } from './sql-append.ts';
import { createIn, createInPieces, operationsAtOnce } from './sql-create.ts';
import { readOperations } from './sql-operations.ts';
import { attachmentRow, revisionAnswer, revisionOf, revisionRow, summaryOf } from './sql-rows.ts';
import { addWholeIn } from './sql-whole.ts';
import { searchText, seriesName } from './summary.ts';
import type { Tables } from './tables.ts';
import {
  attachmentNoteHolds,
  believedAttachment,
  believedRevision,
  revisionHolds,
} from './vouch/believed.ts';
import { arrivingKind, identityHolds } from './vouch/seals.ts';
import { keepSnapshotIn, linkAt, readSnapshot } from './vouch/snapshots.ts';

/** The record in SQLite or PostgreSQL: one SQL for both. */
/** A word shorter than this is no number of a label. */
const shortestNumber = 4;

/** The number on a label: the letters and figures that the id begins with. */
function hasNumber(like: string) {
  return sql`replace(replace(lower(id), '-', ''), '_', '') like ${`${like}%`} escape '\\'`;
}

export class SqlRepository implements Repository {
  private readonly db: Kysely<Tables>;
  /** A database is of one record for as long as it is open. */
  private record: string | undefined;
  constructor(db: Kysely<Tables>) {
    this.db = db;
  }

  async list({ kind, search, gone, series, limit, offset }: ListQuery): Promise<DocumentList> {
    let matching = this.db
      .selectFrom('documents')
      .where('kind', '=', kind)
      .where('gone', '=', gone ? 1 : 0);
    for (const word of searchText(search).split(/\s+/).filter(Boolean)) {
      const like = word.replace(/[\\%_]/g, '\\$&');
      const hasWord = sql<boolean>`search like ${`%${like}%`} escape '\\'`;
      matching = matching.where(
        word.length < shortestNumber ? hasWord : sql<boolean>`(${hasWord} or ${hasNumber(like)})`,
      );
    }
    if (series) matching = matching.where('series', '=', seriesName(series));
    const { total } = await matching
      .select((e) => e.fn.countAll<number>().as('total'))
      .executeTakeFirstOrThrow();
    const found = await matching
      .selectAll()
      .orderBy('updated_at', 'desc')
      .orderBy('id')
      .limit(limit)
      .offset(offset)
      .execute();
    return { documents: found.map(summaryOf), total: Number(total) };
  }

  async find(document: string): Promise<DocumentSummary | undefined> {
    const row = await this.db
      .selectFrom('documents')
      .where('id', '=', document)
      .selectAll()
      .executeTakeFirst();
    return row && summaryOf(row);
  }

  async create(document: NewDocument, pace?: Pace): Promise<DocumentSummary> {
    if (document.operations.length > operationsAtOnce) await createInPieces(this.db, document, pace);
    else await this.db.transaction().execute((trx) => createIn(trx, document));
    return (await this.find(document.id))!;
  }

  append(document: string, operations: readonly Operation[], receivedAt: string): Promise<Appended> {
    return this.db.transaction().execute((trx) => appendIn(trx, document, operations, receivedAt));
  }

  async setGone(document: string, gone: boolean): Promise<DocumentSummary> {
    await this.db.transaction().execute((trx) => setGoneIn(trx, document, gone));
    return (await this.find(document)) ?? documentNotFound(document);
  }

  async operationsAfter(document: string, after: number, limit: number): Promise<StoredOperation[]> {
    return readOperations(this.db, document, after, limit);
  }

  snapshot(document: string): Promise<Standing | undefined> {
    return readSnapshot(this.db, document);
  }

  async makeSnapshot(document: string, seq: number, read: () => Promise<Standing>): Promise<Standing> {
    const link = await linkAt(this.db, document, seq);
    const standing = await read();
    // What cannot be kept (a full disk, a busy database) is made anew the next time.
    if (link !== undefined)
      await this.db
        .transaction()
        .execute((trx) => keepSnapshotIn(trx, document, standing, link))
        .catch(() => undefined);
    return standing;
  }

  async addAttachment(attachment: StoredAttachment, at: string): Promise<boolean> {
    const { numInsertedOrUpdatedRows } = await this.db
      .insertInto('attachments')
      .values(attachmentRow(attachment, at))
      .onConflict((conflict) => conflict.column('hash').doNothing())
      .executeTakeFirstOrThrow();
    return Number(numInsertedOrUpdatedRows) > 0;
  }

  async attachment(hash: string): Promise<StoredAttachment | undefined> {
    const row = await this.db
      .selectFrom('attachments')
      .where('hash', '=', hash)
      .selectAll()
      .executeTakeFirst();
    return row && believedAttachment(row);
  }

  dropUnused(hashes: readonly string[]): Promise<string[]> {
    return this.db.transaction().execute((trx) => dropUnusedIn(trx, hashes));
  }

  erase(document: string, paths: readonly Path[]): Promise<string[]> {
    return this.db.transaction().execute((trx) => eraseIn(trx, document, paths));
  }

  async addRevision(revision: RevisionAnswer): Promise<Revision> {
    await this.db
      .insertInto('revisions')
      .values(revisionRow(revision))
      .onConflict((conflict) => conflict.columns(['document', 'revision']).doNothing())
      .execute();
    const { values: _, ...stored } = (await this.revision(revision.document, revision.revision))!;
    return stored;
  }

  async revisions(document: string): Promise<Revision[]> {
    const found = await this.db
      .selectFrom('revisions')
      .where('document', '=', document)
      .selectAll()
      .orderBy('made_at', 'desc')
      .orderBy('revision')
      .execute();
    return found.filter(revisionHolds).map(revisionOf);
  }

  async revision(document: string, revision: string): Promise<RevisionAnswer | undefined> {
    const row = await this.db
      .selectFrom('revisions')
      .where('document', '=', document)
      .where('revision', '=', revision)
      .selectAll()
      .executeTakeFirst();
    return row && revisionAnswer(believedRevision(row));
  }

  async documentIds(): Promise<string[]> {
    const found = await this.db
      .selectFrom('documents')
      .where('kind', '!=', arrivingKind)
      .select('id')
      .execute();
    // Sorted here: two databases may sort letters in different orders.
    return found.map(({ id }) => id).sort();
  }

  async documentsWith(collection: string): Promise<string[]> {
    const found = await this.db
      .selectFrom('operations')
      .where('collection', '=', collection)
      .select('document')
      .distinct()
      .execute();
    return found.map(({ document }) => document);
  }

  async attachmentNotes(): Promise<{ hash: string; type: string; addedAt: string }[]> {
    const found = await this.db
      .selectFrom('attachments')
      .select(['hash', 'type', 'size', 'added_at', 'seal'])
      .orderBy('hash')
      .execute();
    return found
      .filter(attachmentNoteHolds)
      .map(({ hash, type, added_at }) => ({ hash, type, addedAt: added_at }));
  }

  addWhole(
    documents: Pieces<WholeDocument>,
    attachments: Pieces<StoredAttachment & { addedAt: string }>,
  ): Promise<void> {
    return this.db.transaction().execute((trx) => addWholeIn(trx, documents, attachments));
  }

  async size(): Promise<number> {
    const { rows } = await sql<{ bytes: number }>`
      select (page_count - freelist_count) * page_size as bytes
      from pragma_page_count, pragma_freelist_count, pragma_page_size`.execute(this.db);
    return rows[0].bytes;
  }

  async identity(): Promise<string> {
    this.record ??= (await this.opening()).record;
    return this.record;
  }

  async opening(): Promise<FeedOpening> {
    const row = await this.db.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
    if (!identityHolds(row)) throw new DamagedError(damagedIdentity);
    return { record: row.record, restoredAt: row.restored_at };
  }

  close(): Promise<void> {
    return this.db.destroy();
  }
}

const damagedIdentity =
  'Which record this is cannot be read as stored: the disk or the file is damaged. Put the newest good backup in its place (Settings, Backups)';
