import { existsSync, renameSync } from 'node:fs';
import { join } from 'node:path';
import { type DataFolder, lockFolder, openDataFolder } from '../data-folder.ts';
import { runTask, type TaskOptions } from '../thread/run-task.ts';
import type { Copied } from '../vouch/copy-record.ts';
import { BackupRefused, type Manifest } from './archive.ts';
import { removeWithLogs } from './fresh-record.ts';
import { syncFolder } from './sync.ts';

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
  task: TaskOptions = {},
): Promise<Restored> {
  const fill = (fresh: string) => runTask('restore', { archive, fresh, at: at.toISOString() }, task);
  const { filled, keptAs } = await putInPlace({ folder, at, why: 'restore' }, fill, whileClosed);
  return { ...filled, keptAs };
}

/**
 * Lets `fill` make and check a record beside the one that stands; then the two change places, and the old one is kept.
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
    const keptAs = await whileClosed(() => changePlaces(fresh, place));
    return { filled, keptAs };
  } finally {
    removeWithLogs(fresh);
  }
}

interface Place {
  folder: DataFolder;
  at: Date;
  /** Part of the names of the files beside the record. */
  why: 'restore' | 'import' | 'repair';
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
