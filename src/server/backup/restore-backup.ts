import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { type DataFolder, lockFolder, openDataFolder } from '../data-folder.ts';
import { openDatabase } from '../database.ts';
import { openSqlite } from '../sqlite.ts';
import { BackupRefused, type Manifest, readArchive } from './archive.ts';

export interface Restored {
  manifest: Manifest;
  /** Where the record that stood there before lies now; undefined where there was none. */
  keptAs: string | undefined;
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
 * Unpacks a backup beside the record, checks it and brings it to the present form; then the two change places, and
 * the old one is kept. Who holds the record open closes it around the swap.
 * @throws BackupRefused, DatabaseTrouble; then nothing was changed
 */
export async function restoreInto(
  archive: string,
  folder: DataFolder,
  at: Date,
  whileClosed: (swap: () => string | undefined) => Promise<string | undefined>,
): Promise<Restored> {
  const fill = (fresh: string) => readArchive(archive, fresh);
  const { filled, keptAs } = await putInPlace({ folder, at, why: 'restore' }, fill, whileClosed);
  return { manifest: filled, keptAs };
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
  const remove = () => {
    for (const end of ['', '-wal', '-shm']) rmSync(fresh + end, { force: true });
  };
  remove();
  try {
    const filled = await fill(fresh);
    await checkWhole(fresh, place.at);
    const keptAs = await whileClosed(() => changePlaces(fresh, place));
    return { filled, keptAs };
  } finally {
    remove();
  }
}

interface Place {
  folder: DataFolder;
  at: Date;
  /** Part of the names of the files beside the record. */
  why: 'restore' | 'import';
}

/** Whole, in the present form, and without what is no part of a record: work that was under way at that time. */
async function checkWhole(file: string, at: Date): Promise<void> {
  const { db } = await openDatabase(file);
  try {
    await db.deleteFrom('jobs').execute();
    await db.deleteFrom('sessions').execute();
    await db.updateTable('identity').set({ restored_at: at.toISOString() }).execute();
  } finally {
    await db.destroy();
  }
  const { database } = openSqlite(file);
  try {
    const [verdict] = database.prepare('PRAGMA integrity_check').all([]) as { integrity_check: string }[];
    if (verdict.integrity_check !== 'ok')
      throw new BackupRefused(`The database in this backup is damaged: ${verdict.integrity_check}`);
    database.exec('PRAGMA journal_mode=DELETE');
  } finally {
    database.close();
  }
}

/** Should the second step fail, the first is taken back. */
function changePlaces(fresh: string, { folder, at, why }: Place): string | undefined {
  const file = folder.databaseFile;
  const keptAs = putAside(file, at, why);
  try {
    renameSync(fresh, file);
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
