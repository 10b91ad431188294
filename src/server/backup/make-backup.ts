import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Kysely } from 'kysely';
import type { DamageNote } from '../../record/api.ts';
import { openDatabase, openUnchecked } from '../database.ts';
import { DatabaseTrouble, troubleOf } from '../database-trouble.ts';
import { isOwn } from '../keeper.ts';
import { openSqlite } from '../sqlite.ts';
import type { Tables } from '../tables.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { checkArchive, type Manifest, writeArchive } from './archive.ts';
import { copyInto } from './fresh-record.ts';
import { syncFolder } from './sync.ts';

export interface BackupOptions {
  /** The SQLite file of the record; it may be in use. */
  databaseFile: string;
  /** The archive to write; it appears under its name only when it is whole. */
  out: string;
  madeAt: string;
  writtenBy: string;
}

/**
 * A consistent backup while others read and write: SQLite's own online backup makes the copy, every row of which is
 * then held against what vouches for it. What is damaged is left out and named; all else is packed, and the archive
 * is read to its end before it counts. @throws DatabaseTrouble
 */
export async function makeBackup(
  { databaseFile, out, madeAt, writtenBy }: BackupOptions,
  onProgress: (done: number, total: number) => void = () => undefined,
): Promise<Manifest> {
  if (!existsSync(databaseFile)) throw new DatabaseTrouble('cannot open', databaseFile);
  const [copy, good, part] = [`${out}.copy`, `${out}.copy-good`, `${out}.part`];
  try {
    await copyFile(databaseFile, copy);
    const damaged = await damageIn(copy, onProgress);
    const leftOut = damaged ? await withoutDamage(copy, good, databaseFile) : undefined;
    const packed = damaged ? good : copy;
    const facts = { ...(await factsOf(packed)), ...(leftOut ? { leftOut } : {}) };
    await writeArchive(packed, { ...facts, madeAt, writtenBy }, part);
    const manifest = await checkArchive(part);
    renameSync(part, out);
    syncFolder(dirname(out));
    return manifest;
  } finally {
    for (const file of [copy, good])
      for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
    rmSync(part, { force: true });
  }
}

/** @throws DatabaseTrouble */
async function copyFile(databaseFile: string, copy: string): Promise<void> {
  try {
    const source = openSqlite(databaseFile);
    await source.backup(copy).finally(() => source.database.close());
  } catch (error) {
    throw troubleOf(error, databaseFile) ?? error;
  }
}

/** Whether anything in it is not what was stored; brought to the present form on the way. */
async function damageIn(copy: string, onProgress: (done: number, total: number) => void): Promise<boolean> {
  let db: Kysely<Tables> | undefined;
  try {
    ({ db } = await openDatabase(copy));
    const { damaged } = await checkRecord(db, { structure: true, onProgress });
    return damaged.length > 0;
  } catch (error) {
    if (error instanceof DatabaseTrouble && error.kind === 'damaged') return true;
    throw error;
  } finally {
    await db?.destroy();
  }
}

/** The good part of it as a record of its own. @throws DatabaseTrouble where there is none to be had */
async function withoutDamage(copy: string, good: string, databaseFile: string): Promise<DamageNote[]> {
  const source = openUnchecked(copy);
  try {
    const { leftOut, mended } = await copyInto(source, good, {});
    return [...leftOut, ...mended];
  } catch (cause) {
    throw new DatabaseTrouble('damaged', databaseFile, 'no backup was made', { cause });
  } finally {
    await source.destroy();
  }
}

/** In one file afterwards, without a log beside it. */
async function factsOf(copy: string): Promise<{ record: string; documents: number; own: number }> {
  const { db, repository } = await openDatabase(copy);
  const record = await repository.identity();
  const ids = await repository.documentIds();
  await db.destroy();
  const { database } = openSqlite(copy);
  database.exec('PRAGMA journal_mode=DELETE');
  database.close();
  return { record, documents: ids.length, own: ids.filter(isOwn).length };
}
