import { sql } from 'kysely';
import { BackupDonor } from '../backup/donor.ts';
import { checkFilled, copyInto, unpackInto } from '../backup/fresh-record.ts';
import { type BackupOptions, makeBackup } from '../backup/make-backup.ts';
import { openDatabase, openUnchecked } from '../database.ts';
import { importShop } from '../shop-files/import-shop.ts';
import { checkRecord } from '../vouch/check-record.ts';

type Progress = (done: number, total: number) => void;

/** Work on whole records that takes too long for the thread that answers requests. Plain values in and out. */
export const tasks = {
  /** Reads a record from end to end. */
  async check({ file }: { file: string }, onProgress: Progress) {
    const db = openUnchecked(file);
    try {
      // Others write meanwhile: all of it is read as it stood at one moment.
      await sql`begin`.execute(db);
      return await checkRecord(db, { structure: true, onProgress });
    } finally {
      await db.destroy();
    }
  },

  backup: (options: BackupOptions, onProgress: Progress) => makeBackup(options, onProgress),

  /** A fresh record of what a backup holds. */
  async restore(
    { archive, fresh, at }: { archive: string; fresh: string; at: string },
    onProgress: Progress,
  ) {
    const restored = await unpackInto(archive, fresh, at, onProgress);
    await checkFilled(fresh, at);
    return restored;
  },

  /** A fresh record of what is good in a damaged one, the rest from its backups. */
  async repair(
    { file, fresh, at, backups }: { file: string; fresh: string; at: string; backups: string[] },
    onProgress: Progress,
  ) {
    const source = openUnchecked(file);
    const donor = new BackupDonor(backups, `${fresh}.donor`);
    try {
      const copied = await copyInto(source, fresh, { donor, restoredAt: at, onProgress });
      await checkFilled(fresh, at);
      return copied;
    } finally {
      await donor.close();
      await source.destroy();
    }
  },

  /** A fresh record of a whole shop's files. */
  async import(
    { archive, fresh, scratch, at }: { archive: string; fresh: string; scratch: string; at: string },
    onProgress: Progress,
  ) {
    const { repository } = await openDatabase(fresh);
    const imported = await importShop(repository, archive, scratch, onProgress).finally(() =>
      repository.close(),
    );
    await checkFilled(fresh, at);
    return imported;
  },
};

export type Tasks = typeof tasks;
