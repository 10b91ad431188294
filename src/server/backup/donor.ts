import { rmSync } from 'node:fs';
import type { Kysely } from 'kysely';
import { openDatabase } from '../database.ts';
import { DatabaseTrouble } from '../database-trouble.ts';
import type { Repository, StoredAttachment, WholeDocument } from '../repository.ts';
import type { Tables } from '../tables.ts';
import { attachmentNoteHolds, believedAttachment } from '../vouch/believed.ts';
import type { Donor } from '../vouch/best-of.ts';
import { readDocument } from '../vouch/read-document.ts';
import { BackupRefused, readArchive } from './archive.ts';

/** Backups opened at most in search of one part. */
const mostOpened = 12;

interface OpenBackup {
  db: Kysely<Tables>;
  repository: Repository;
  file: string;
}

/** Gives what a damaged record lacks, from the newest backup that has it whole. */
export class BackupDonor implements Donor {
  private readonly archives: readonly string[];
  private readonly scratch: string;
  private readonly opened: (OpenBackup | undefined)[] = [];

  /** @param archives the newest first; @param scratch begins the names of files that are gone after `close` */
  constructor(archives: readonly string[], scratch: string) {
    this.archives = archives.slice(0, mostOpened);
    this.scratch = scratch;
  }

  document(id: string): Promise<WholeDocument | undefined> {
    return this.first(async ({ db }) => {
      const row = await db.selectFrom('documents').where('id', '=', id).selectAll().executeTakeFirst();
      const read = row && (await readDocument(db, row));
      return read && read.faults.length === 0 ? read.whole : undefined;
    });
  }

  attachment(hash: string): Promise<(StoredAttachment & { addedAt: string }) | undefined> {
    return this.first(async ({ db }) => {
      const row = await db.selectFrom('attachments').where('hash', '=', hash).selectAll().executeTakeFirst();
      if (!row || !attachmentNoteHolds(row)) return undefined;
      return { ...believedAttachment(row), addedAt: row.added_at };
    });
  }

  identity(): Promise<string | undefined> {
    return this.first(({ repository }) => repository.identity());
  }

  async close(): Promise<void> {
    for (const backup of this.opened) {
      if (!backup) continue;
      await backup.db.destroy();
      for (const end of ['', '-wal', '-shm']) rmSync(backup.file + end, { force: true });
    }
  }

  private async first<T>(look: (backup: OpenBackup) => Promise<T | undefined>): Promise<T | undefined> {
    for (const index of this.archives.keys()) {
      const backup = await this.open(index);
      const found = backup && (await look(backup).catch(() => undefined));
      if (found !== undefined) return found;
    }
    return undefined;
  }

  /** Undefined where that backup cannot be read itself. */
  private async open(index: number): Promise<OpenBackup | undefined> {
    if (index in this.opened) return this.opened[index];
    const file = `${this.scratch}-${index}`;
    try {
      await readArchive(this.archives[index], file);
      this.opened[index] = { ...(await openDatabase(file)), file };
    } catch (error) {
      if (!(error instanceof BackupRefused) && !(error instanceof DatabaseTrouble)) throw error;
      rmSync(file, { force: true });
      this.opened[index] = undefined;
    }
    return this.opened[index];
  }
}
