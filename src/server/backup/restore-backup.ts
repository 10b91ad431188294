import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import type { Kysely } from 'kysely';
import { type DataFolder, lockFolder, openDataFolder } from '../data-folder.ts';
import { openDatabase } from '../database.ts';
import { troubleOf } from '../database-trouble.ts';
import { openSqlite } from '../sqlite.ts';
import type { Tables } from '../tables.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { type Copied, copyRecord } from '../vouch/copy-record.ts';
import { identitySeal } from '../vouch/seals.ts';
import { BackupRefused, type Manifest, readArchive } from './archive.ts';
import { syncFile, syncFolder } from './sync.ts';

export interface Restored {
  manifest: Manifest;
  /** Where the record that stood there before lies now; undefined where there was none. */
  keptAs: string | undefined;
  /** What of it was put in place, and what not. */
  copied: Copied;
}

/**
 * Puts a backup in the place of a data folder's record while no server uses it.
 * @throws BackupRefused, DatabaseTrouble; then nothing was changed
 */
export async function restoreBackup(archive: string, dataFolder: string, at: Date): Promise<Restored> {
  if (!existsSync(archive)) throw new BackupRefused(`There is no file ${archive}. Check the name`);
  const folder = openDataFolder(dataFolder);
  const lock = lockFolder(folder.path);
  if (!lock)
    throw new BackupRefused(
      `A server uses ${folder.path}. End it first, then restore; or restore on its Settings sheet`,
    );
  try {
    return await restoreInto(archive, folder, at, async (swap) => swap());
  } finally {
    lock.release();
  }
}

/**
 * Unpacks a backup beside the record and copies it row by row, each row checked as an edit is, into a fresh one; then
 * the two change places, and the old one is kept. Who holds the record open closes it around the swap.
 * @throws BackupRefused, DatabaseTrouble; then nothing was changed
 */
export async function restoreInto(
  archive: string,
  folder: DataFolder,
  at: Date,
  whileClosed: (swap: () => string | undefined) => Promise<string | undefined>,
): Promise<Restored> {
  const fill = (fresh: string) => unpackInto(archive, fresh, at);
  const { filled, keptAs } = await putInPlace({ folder, at, why: 'restore' }, fill, whileClosed);
  return { ...filled, keptAs };
}

async function unpackInto(
  archive: string,
  fresh: string,
  at: Date,
): Promise<{ manifest: Manifest; copied: Copied }> {
  const unpacked = `${fresh}.unpacked`;
  try {
    const manifest = await readArchive(archive, unpacked);
    refuseForeign(unpacked);
    const source = await openDatabase(unpacked);
    try {
      const copied = await copyInto(source.db, fresh, { restoredAt: at.toISOString() });
      return { manifest, copied };
    } finally {
      await source.db.destroy();
    }
  } finally {
    removeWithLogs(unpacked);
  }
}

/** A record's file holds tables and their indices. What runs by itself when it is used was put there by others. */
function refuseForeign(file: string): void {
  const { database } = openSqlite(file);
  try {
    const found = database
      .prepare(
        "select type, name from sqlite_master where type in ('trigger', 'view') or sql like '%virtual%'",
      )
      .all([]) as { type: string; name: string }[];
    if (found.length === 0) return;
    const [{ type, name }] = found;
    throw new BackupRefused(
      `The database in this backup holds a ${type} ${JSON.stringify(name.slice(0, 60))}, which no backup made by Fairbend has. Take another backup`,
    );
  } catch (error) {
    throw error instanceof BackupRefused ? error : (troubleOf(error, 'in this backup') ?? error);
  } finally {
    database.close();
  }
}

/** Makes the fresh record at `file`: all of it in one transaction. */
export async function copyInto(
  source: Kysely<Tables>,
  file: string,
  options: Parameters<typeof copyRecord>[2],
): Promise<Copied> {
  const { db } = await openDatabase(file);
  try {
    return await db.transaction().execute((trx) => copyRecord(source, trx, options));
  } finally {
    await db.destroy();
  }
}

/**
 * Lets `fill` make a database beside the record and checks it; then the two change places, and the old one is kept.
 * @throws whatever `fill` and `whileClosed` throw, BackupRefused, DatabaseTrouble; then nothing was changed
 */
export async function putInPlace<T>(
  place: Place,
  fill: (fresh: string) => Promise<T>,
  whileClosed: (swap: () => string | undefined) => Promise<string | undefined>,
): Promise<{ filled: T; keptAs: string | undefined }> {
  const fresh = join(place.folder.path, `${place.why}.sqlite.part`);
  removeWithLogs(fresh);
  try {
    const filled = await fill(fresh);
    await checkWhole(fresh, place.at);
    const keptAs = await whileClosed(() => changePlaces(fresh, place));
    return { filled, keptAs };
  } finally {
    removeWithLogs(fresh);
  }
}

function removeWithLogs(file: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
}

interface Place {
  folder: DataFolder;
  at: Date;
  /** Part of the names of the files beside the record. */
  why: 'restore' | 'import' | 'repair';
}

/** Whole, in the present form, in one file that is on the disk. */
async function checkWhole(file: string, at: Date): Promise<void> {
  const { db } = await openDatabase(file);
  try {
    const { record } = await db.selectFrom('identity').select('record').executeTakeFirstOrThrow();
    const identity = { record, restored_at: at.toISOString() };
    await db
      .updateTable('identity')
      .set({ ...identity, seal: identitySeal(identity) })
      .execute();
    const { damaged } = await checkRecord(db, { structure: true });
    if (damaged.length > 0)
      throw new BackupRefused(`What was made of it does not hold: ${damaged[0].what}. Try again`);
  } finally {
    await db.destroy();
  }
  const { database } = openSqlite(file);
  database.exec('PRAGMA journal_mode=DELETE');
  database.close();
  syncFile(file);
}

/** Should the second step fail, the first is taken back. */
function changePlaces(fresh: string, { folder, at, why }: Place): string | undefined {
  const file = folder.databaseFile;
  const keptAs = putAside(file, at, why);
  try {
    renameSync(fresh, file);
    syncFolder(folder.path);
  } catch (error) {
    if (keptAs) moveWithLogs(keptAs, file);
    throw error;
  }
  return keptAs;
}

/** The file and the logs beside it, which belong to it even when it is damaged. */
function putAside(file: string, at: Date, why: Place['why']): string | undefined {
  if (!existsSync(file)) return undefined;
  const stamp = at.toISOString().replace(/[:.]/g, '-');
  const keptAs = file.replace(/\.sqlite$/, `-before-${why}-${stamp}.sqlite`);
  moveWithLogs(file, keptAs);
  return keptAs;
}

function moveWithLogs(from: string, to: string): void {
  for (const end of ['-wal', '-shm', '']) if (existsSync(from + end)) renameSync(from + end, to + end);
}
