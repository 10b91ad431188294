import { closeSync, openSync, writeSync } from 'node:fs';
import { sql } from 'kysely';
import { BackupDonor } from '../backup/donor.ts';
import { checkFilled, copyInto, unpackInto } from '../backup/fresh-record.ts';
import {
  type BackupOptions,
  backUpServer,
  makeBackup,
  type ServerBackupOptions,
} from '../backup/make-backup.ts';
import { buildFileText } from '../build-file-text.ts';
import { ChangeFeed } from '../change-feed.ts';
import { openDatabase, openUnchecked } from '../database.ts';
import { Keeper } from '../keeper.ts';
import { importShop } from '../shop-files/import-shop.ts';
import { shopZip } from '../shop-files/write-shop.ts';
import { SqlRepository } from '../sql-repository.ts';
import { takeBuildFile } from '../take-build-file.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { mendInPlace } from '../vouch/mend-in-place.ts';

type Progress = (done: number, total: number) => void;

export interface WriteBuild {
  file: string;
  id: string;
  attachments: boolean;
  writtenBy: string;
}

export interface MendRecord {
  address: string;
  /** The file that keeps the damaged rows. */
  keptAs: string;
  at: string;
  /** The newest first. */
  backups: string[];
}

export interface WriteShop {
  file: string;
  out: string;
  writtenBy: string;
  madeAt: string;
}

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

  serverBackup: (options: ServerBackupOptions, onProgress: Progress) => backUpServer(options, onProgress),

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

  /** What is damaged in a record on PostgreSQL is mended where it stands, from backups. */
  async mend({ address, keptAs, at, backups }: MendRecord, onProgress: Progress) {
    const { db } = await openDatabase(address);
    const donor = new BackupDonor(backups, `${keptAs}.donor`);
    try {
      return await mendInPlace(db, { donor, at, keptAs, onProgress });
    } finally {
      await donor.close();
      await db.destroy();
    }
  },

  /** What a build file brings. */
  async readBuild({ text, id, at }: { text: string; id: string; at: string }) {
    return takeBuildFile(text, id, at);
  },

  /** A build as the text of its file. */
  async writeBuild({ file, id, attachments, writtenBy }: WriteBuild) {
    const db = openUnchecked(file);
    try {
      await sql`begin`.execute(db);
      const keeper = new Keeper(new SqlRepository(db), new ChangeFeed());
      return await buildFileText(keeper, id, { attachments, writtenBy });
    } finally {
      await db.destroy();
    }
  },

  /** The whole shop as an archive of plain files, written to `out`. */
  async writeShop({ file, out, writtenBy, madeAt }: WriteShop, onProgress: Progress) {
    const db = openUnchecked(file);
    const archive = openSync(out, 'w', 0o600);
    try {
      await sql`begin`.execute(db);
      for await (const piece of shopZip(new SqlRepository(db), { writtenBy, madeAt }, onProgress))
        writeSync(archive, piece);
    } finally {
      closeSync(archive);
      await db.destroy();
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
