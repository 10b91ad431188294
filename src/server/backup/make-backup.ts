import { existsSync, renameSync, rmSync } from 'node:fs';
import { openDatabase } from '../database.ts';
import { DatabaseTrouble } from '../database-trouble.ts';
import { openSqlite } from '../sqlite.ts';
import { type Manifest, writeArchive } from './archive.ts';

export interface BackupOptions {
  /** The SQLite file of the record; it may be in use. */
  databaseFile: string;
  /** The archive to write; it appears under its name only when it is whole. */
  out: string;
  madeAt: string;
  writtenBy: string;
}

/**
 * A consistent backup while others read and write: SQLite's own online backup makes the copy, which is then
 * checked and packed. @throws DatabaseTrouble
 */
export async function makeBackup({ databaseFile, out, madeAt, writtenBy }: BackupOptions): Promise<Manifest> {
  if (!existsSync(databaseFile)) throw new DatabaseTrouble('cannot open', databaseFile);
  const [copy, part] = [`${out}.copy`, `${out}.part`];
  try {
    const source = openSqlite(databaseFile);
    await source.backup(copy).finally(() => source.database.close());
    const manifest = await writeArchive(copy, { ...(await factsOf(copy)), madeAt, writtenBy }, part);
    renameSync(part, out);
    return manifest;
  } finally {
    for (const file of [copy, `${copy}-wal`, `${copy}-shm`, part]) rmSync(file, { force: true });
  }
}

/** Checks the copy; in one file afterwards, without a log beside it. */
async function factsOf(copy: string): Promise<{ record: string; documents: number }> {
  const { db } = await openDatabase(copy);
  const { record } = await db.selectFrom('identity').select('record').executeTakeFirstOrThrow();
  const { total } = await db
    .selectFrom('documents')
    .select((e) => e.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  await db.destroy();
  const { database } = openSqlite(copy);
  database.exec('PRAGMA journal_mode=DELETE');
  database.close();
  return { record, documents: Number(total) };
}
