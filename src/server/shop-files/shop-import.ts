import { mkdirSync, rmSync } from 'node:fs';
import { open, rm } from 'node:fs/promises';
import { join } from 'node:path';
import type { ShopImportAnswer, ShopImportStanding } from '../../record/record-api.ts';
import { putInPlace } from '../backup/restore-backup.ts';
import type { DataFolder } from '../data-folder.ts';
import { ConflictError, RefusedError, TooLargeError } from '../errors.ts';
import { isOwn } from '../keeper.ts';
import type { Repository } from '../repository.ts';
import { openSqlite } from '../sqlite.ts';
import { both, CalledOff, runTask, type TaskOptions } from '../thread/run-task.ts';
import { Works } from '../thread/works.ts';
import type { ImportedShop } from './import-shop.ts';
import { ShopRefused } from './read-shop.ts';

const calledOff = 'The import was called off; nothing was changed';
/** Most bytes of an archive that is sent. */
const largestArchive = 4 * 1024 ** 3;

interface ShopImportParts {
  folder: DataFolder;
  /** The record that stands now. */
  repository(): Repository;
  /** Closes the record, lets another take its place, opens that. */
  replace(swap: () => string | undefined): Promise<string | undefined>;
  now(): Date;
  works?: Works;
}

/**
 * A whole shop sent to a running server: written down, read and checked, made into a record beside the one that
 * stands, and only then put in its place. Done only where that one holds nothing of the builder's own.
 */
export class ShopImport {
  private readonly parts: ShopImportParts;
  private callingOff: AbortController | undefined;
  private under: { stage: 'receiving' | 'reading'; done: number; total: number } | undefined;

  constructor(parts: ShopImportParts) {
    this.parts = parts;
  }

  /** How far an import is, or whether one can be made. */
  async standing(): Promise<ShopImportStanding> {
    if (this.under) return { ...this.under, refusal: null };
    return {
      stage: 'none',
      done: 0,
      total: 0,
      refusal: refusalOf(await this.parts.repository().documentIds()),
    };
  }

  /**
   * @param total bytes announced; 0 where they are not
   * @throws ConflictError, RefusedError, TooLargeError; then the record is as it was
   */
  async takeIn(sent: AsyncIterable<Uint8Array>, total: number): Promise<ShopImportAnswer> {
    if (this.under) throw new ConflictError('A shop is being taken in at this moment. Wait until it is done');
    const refusal = refusalOf(await this.parts.repository().documentIds());
    if (refusal) throw new ConflictError(refusal);
    const { folder, replace, now } = this.parts;
    const archive = join(folder.path, 'import.zip.part');
    this.under = { stage: 'receiving', done: 0, total };
    this.callingOff = new AbortController();
    try {
      await this.receive(sent, archive);
      const swapIfStillEmpty = (swap: () => string | undefined) =>
        replace(() => {
          refuseFilled(folder.databaseFile);
          return swap();
        });
      const fill = (fresh: string) => this.read(archive, fresh);
      const { filled, keptAs } = await putInPlace(
        { folder, at: now(), why: 'import' },
        fill,
        swapIfStillEmpty,
      );
      return { ...filled, keptAs: keptAs ?? null };
    } catch (error) {
      if (!(error instanceof ShopRefused)) throw error;
      throw new RefusedError([{ path: 'shop', message: error.message }]);
    } finally {
      this.under = undefined;
      await rm(archive, { force: true });
    }
  }

  /** Ends an import that is under way; the record stays as it was. */
  cancel(): void {
    this.callingOff?.abort();
  }

  private async receive(sent: AsyncIterable<Uint8Array>, archive: string): Promise<void> {
    const file = await open(archive, 'w', 0o600);
    try {
      for await (const chunk of sent) {
        if (this.callingOff?.signal.aborted) throw new CalledOff(calledOff);
        this.under!.done += chunk.length;
        if (this.under!.done > largestArchive)
          throw new TooLargeError(
            'The archive is larger than 4 GB. Take it in on the command line: npm run fairbend -- import-shop FILE --data FOLDER',
          );
        await file.write(chunk);
      }
    } finally {
      await file.close();
    }
  }

  private read(archive: string, fresh: string): Promise<ImportedShop> {
    const { folder, now } = this.parts;
    const onProgress = (done: number, total: number) => {
      this.under = { stage: 'reading', done, total };
    };
    // A thread that is ended takes nothing away itself.
    const scratch = join(folder.path, 'import.part');
    mkdirSync(scratch, { recursive: true, mode: 0o700 });
    const input = { archive, fresh, scratch, at: now().toISOString() };
    const { works = new Works() } = this.parts;
    const read = (task: Required<TaskOptions>) =>
      runTask('import', input, { ...task, onProgress: both(onProgress, task.onProgress) });
    return works
      .run('shop in', read, this.callingOff!.signal)
      .finally(() => rmSync(scratch, { recursive: true, force: true }));
  }
}

/** Why nothing can be taken in, in words for the builder; null where nothing of his own is there. */
function refusalOf(documents: readonly string[]): string | null {
  const own = documents.filter(isOwn).length;
  if (own === 0) return null;
  const holds = own === 1 ? 'one build or repair' : `${own} builds and repairs`;
  return `This record holds ${holds} already (archived ones count too), and two shops are not mixed. Start Fairbend on an empty folder, “npm start -- --data FOLDER”, and take the shop in there; a single build is opened from the shelf`;
}

/** Asked once more while nobody can write. */
function refuseFilled(databaseFile: string): void {
  const { database } = openSqlite(databaseFile);
  try {
    const found = database.prepare('select id from documents').all([]) as { id: string }[];
    const refusal = refusalOf(found.map(({ id }) => id));
    if (refusal) throw new ConflictError(refusal);
  } finally {
    database.close();
  }
}
