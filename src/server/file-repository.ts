import { closeSync, constants, openSync, readFileSync, statSync, writeSync } from 'node:fs';
import { type Kysely, sql } from 'kysely';
import type { DocumentSummary, Revision, RevisionAnswer } from '../record/api.ts';
import type { Operation, Path } from '../record/operation.ts';
import { DatabaseTrouble } from './database-trouble.ts';
import { forgetLog } from './erase.ts';
import type { Appended, NewDocument, Pace, StoredAttachment } from './repository.ts';
import { SqlRepository } from './sql-repository.ts';
import type { Tables } from './tables.ts';

/**
 * The record in a SQLite file of this computer, which people can delete, move or put an older copy of in its place.
 * Nothing is acknowledged once the file is not the one that was opened; and how many changes were acknowledged is
 * noted beside it, so that the next start knows when some are gone.
 */
export class FileRepository extends SqlRepository {
  private readonly connection: Kysely<Tables>;
  private readonly file: string;
  private readonly opened: string;
  private readonly mark: number;
  private markOf = '';
  private changes = 0;
  /** Changes that were acknowledged and are not there any more. */
  lost = 0;

  private constructor(db: Kysely<Tables>, file: string) {
    super(db);
    this.connection = db;
    this.file = file;
    this.opened = identityOf(file) ?? '';
    this.mark = openMark(file);
  }

  static async open(db: Kysely<Tables>, file: string): Promise<FileRepository> {
    const repository = new FileRepository(db, file);
    await repository.compare(db);
    return repository;
  }

  override async create(document: NewDocument, pace?: Pace): Promise<DocumentSummary> {
    this.assertInPlace();
    const created = await super.create(document, pace);
    this.note(created.lastSeq);
    return created;
  }

  override async append(
    document: string,
    operations: readonly Operation[],
    receivedAt: string,
  ): Promise<Appended> {
    this.assertInPlace();
    const appended = await super.append(document, operations, receivedAt);
    this.note(appended.stored.length);
    return appended;
  }

  override async addAttachment(attachment: StoredAttachment, at: string): Promise<boolean> {
    this.assertInPlace();
    const added = await super.addAttachment(attachment, at);
    this.note(added ? 1 : 0);
    return added;
  }

  override async dropUnused(hashes: readonly string[]): Promise<string[]> {
    this.assertInPlace();
    const gone = await super.dropUnused(hashes);
    this.note(-gone.length);
    return gone;
  }

  override async addRevision(revision: RevisionAnswer): Promise<Revision> {
    this.assertInPlace();
    const before = await this.revision(revision.document, revision.revision);
    const added = await super.addRevision(revision);
    this.note(before ? 0 : 1);
    return added;
  }

  override async erase(document: string, paths: readonly Path[]): Promise<string[]> {
    this.assertInPlace();
    const gone = await super.erase(document, paths);
    await forgetLog(this.connection);
    this.note(-gone.length);
    return gone;
  }

  override async close(): Promise<void> {
    closeSync(this.mark);
    await super.close();
  }

  /** The file that is open is the one that lies there. @throws DatabaseTrouble */
  private assertInPlace(): void {
    if (identityOf(this.file) !== this.opened) throw new DatabaseTrouble('gone', this.file);
  }

  private async compare(db: Kysely<Tables>): Promise<void> {
    const { record, restored_at } = await db.selectFrom('identity').selectAll().executeTakeFirstOrThrow();
    this.markOf = `${record} ${restored_at}`;
    this.changes = await changesIn(db);
    const [text = ''] = readFileSync(markFile(this.file), 'utf8').split('\n');
    const [, of, count] = /^(.*) (\d+)$/.exec(text) ?? [];
    // Another record that no backup brought: the one that was counted is gone, and this one was made new.
    const madeNew = of !== undefined && restored_at === '' && !of.startsWith(record);
    if (of === this.markOf || madeNew) this.lost = Math.max(0, Number(count) - this.changes);
    this.note(0);
  }

  /** Not forced to the disk: after a power cut it may say fewer, which claims nothing. */
  private note(added: number): void {
    this.assertInPlace();
    this.changes += added;
    try {
      writeSync(this.mark, `${this.markOf} ${String(this.changes).padStart(12, '0')}\n`, 0);
    } catch {
      // On a full disk the change itself is stored all the same.
    }
  }
}

/** Operations, pictures and printed states, as they are counted when each is stored. */
async function changesIn(db: Kysely<Tables>): Promise<number> {
  const { rows } = await sql<{ sum: number }>`
    select coalesce((select sum(last_seq) from documents), 0)
      + (select count(*) from attachments) + (select count(*) from revisions) as sum`.execute(db);
  return Number(rows[0].sum);
}

/** @throws DatabaseTrouble */
function openMark(file: string): number {
  try {
    return openSync(markFile(file), constants.O_RDWR | constants.O_CREAT, 0o600);
  } catch (cause) {
    throw new DatabaseTrouble('read-only', markFile(file), '', { cause });
  }
}

function markFile(file: string): string {
  return `${file}-count`;
}

/** Which file lies there; undefined where none does. */
function identityOf(file: string): string | undefined {
  const found = statSync(file, { throwIfNoEntry: false, bigint: true });
  return found && `${found.dev}.${found.ino}`;
}
