import { existsSync, renameSync, rmSync } from 'node:fs';
import { dirname } from 'node:path';
import type { Kysely } from 'kysely';
import type { DamageNote } from '../../record/record-api.ts';
import { openDatabase, openUnchecked } from '../database.ts';
import { DatabaseTrouble, troubleOf } from '../database-trouble.ts';
import { isOwn } from '../keeper.ts';
import { openSqlite } from '../sqlite.ts';
import type { Tables } from '../tables.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { checkArchive, type Manifest, writeArchive } from './archive.ts';
import { copyInto } from './fresh-record.ts';
import { syncFolder } from './sync.ts';

interface ArchiveOptions {
  /** The archive to write; it appears under its name only when it is whole. */
  out: string;
  madeAt: string;
  writtenBy: string;
}

export interface BackupOptions extends ArchiveOptions {
  /** The SQLite file of the record; it may be in use. */
  databaseFile: string;
}

export interface ServerBackupOptions extends ArchiveOptions {
  /** The postgres:// address of the record; it may be in use. */
  address: string;
}

type Progress = (done: number, total: number) => void;

/**
 * A consistent backup while others read and write: SQLite's own online backup makes the copy, every row of which is
 * then held against what vouches for it. What is damaged is left out and named; all else is packed, and the archive
 * is read to its end before it counts. @throws DatabaseTrouble
 */
export async function makeBackup(
  { databaseFile, ...about }: BackupOptions,
  onProgress: Progress = () => undefined,
): Promise<Manifest> {
  if (!existsSync(databaseFile)) throw new DatabaseTrouble('cannot open', databaseFile);
  return pack(about, async (copy, good) => {
    await copyFile(databaseFile, copy);
    if (!(await damageIn(copy, onProgress))) return { file: copy, leftOut: [] };
    return { file: good, leftOut: await withoutDamage(copy, good, databaseFile) };
  });
}

/** The same of a record on PostgreSQL, as it stands at one moment: the good part of it in a SQLite file. */
export async function backUpServer(
  { address, ...about }: ServerBackupOptions,
  onProgress: Progress = () => undefined,
): Promise<Manifest> {
  const { db } = await openDatabase(address);
  try {
    return await pack(about, async (copy) => {
      const reading = db.transaction().setIsolationLevel('repeatable read');
      const { leftOut, mended } = await reading.execute((trx) => copyInto(trx, copy, { onProgress }));
      return { file: copy, leftOut: [...leftOut, ...mended] };
    });
  } finally {
    await db.destroy();
  }
}

/** @param fill makes a SQLite file of what is good, at one of two places, and says what is not in it */
async function pack(
  { out, madeAt, writtenBy }: ArchiveOptions,
  fill: (copy: string, good: string) => Promise<{ file: string; leftOut: DamageNote[] }>,
): Promise<Manifest> {
  const [copy, good, part] = [`${out}.copy`, `${out}.copy-good`, `${out}.part`];
  try {
    const { file, leftOut } = await fill(copy, good);
    const facts = { ...(await factsOf(file)), ...(leftOut.length > 0 ? { leftOut } : {}) };
    await writeArchive(file, { ...facts, madeAt, writtenBy }, part);
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
async function damageIn(copy: string, onProgress: Progress): Promise<boolean> {
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
