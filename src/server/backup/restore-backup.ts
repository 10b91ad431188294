import { existsSync, renameSync, rmSync } from 'node:fs';
import { join } from 'node:path';
import { lockFolder, openDataFolder } from '../data-folder.ts';
import { openDatabase } from '../database.ts';
import { openSqlite } from '../sqlite.ts';
import { BackupRefused, type Manifest, readArchive } from './archive.ts';

export interface Restored {
  manifest: Manifest;
  /** Where the record that stood there before lies now; undefined where there was none. */
  keptAs: string | undefined;
}

/**
 * Puts a backup in the place of a data folder's record. It is unpacked beside it, checked and brought to the
 * present form first; then the two change places, and the old one is kept.
 * @throws BackupRefused, DatabaseTrouble; then nothing was changed
 */
export async function restoreBackup(archive: string, dataFolder: string, at: Date): Promise<Restored> {
  if (!existsSync(archive)) throw new BackupRefused(`There is no file ${archive}. Check the name`);
  const folder = openDataFolder(dataFolder);
  const lock = lockFolder(folder.path);
  if (!lock) throw new BackupRefused(`A server uses ${folder.path}. End it first, then restore`);
  const fresh = join(folder.path, 'restore.sqlite.part');
  try {
    const manifest = await readArchive(archive, fresh);
    await checkWhole(fresh);
    const keptAs = putAside(folder.databaseFile, at);
    renameSync(fresh, folder.databaseFile);
    return { manifest, keptAs };
  } finally {
    for (const end of ['', '-wal', '-shm']) rmSync(fresh + end, { force: true });
    lock.release();
  }
}

async function checkWhole(file: string): Promise<void> {
  const { db } = await openDatabase(file);
  await db.destroy();
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

/** The file and the logs beside it, which belong to it even when it is damaged. */
function putAside(file: string, at: Date): string | undefined {
  if (!existsSync(file)) return undefined;
  const stamp = at.toISOString().replace(/[:.]/g, '-');
  const keptAs = file.replace(/\.sqlite$/, `-before-restore-${stamp}.sqlite`);
  for (const end of ['-wal', '-shm', '']) if (existsSync(file + end)) renameSync(file + end, keptAs + end);
  return keptAs;
}
