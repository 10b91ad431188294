import { closeSync, openSync, writeSync } from 'node:fs';
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
import { readAtOneMoment } from '../read-at-one-moment.ts';
import { importShop } from '../shop-files/import-shop.ts';
import { shopZip } from '../shop-files/write-shop.ts';
import { takeBuildFile } from '../take-build-file.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { mendInPlace } from '../vouch/mend-in-place.ts';

type Progress = (done: number, total: number) => void;

export interface WriteBuild {
  /** A SQLite file or a postgres:// address. */
  place: string;
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
  /** A SQLite file or a postgres:// address. */
  place: string;
  out: string;
  writtenBy: string;
  madeAt: string;
}

/** Work on whole records that takes too long for the thread that answers requests. Plain values in and out. */
export const tasks = {
  /** Reads a record from end to end. */
  check: ({ file }: { file: string }, onProgress: Progress) =>
    readAtOneMoment(file, (_, db) => checkRecord(db, { structure: true, onProgress })),

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
  writeBuild: ({ place, id, attachments, writtenBy }: WriteBuild) =>
    readAtOneMoment(place, (repository) =>
      buildFileText(new Keeper(repository, new ChangeFeed()), id, { attachments, writtenBy }),
    ),

  /** The whole shop as an archive of plain files, written to `out`. */
  async writeShop({ place, out, writtenBy, madeAt }: WriteShop, onProgress: Progress) {
    const archive = openSync(out, 'w', 0o600);
    try {
      await readAtOneMoment(place, async (repository) => {
        for await (const piece of shopZip(repository, { writtenBy, madeAt }, onProgress))
          writeSync(archive, piece);
      });
    } finally {
      closeSync(archive);
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
