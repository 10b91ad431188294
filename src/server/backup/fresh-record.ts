import { rmSync } from 'node:fs';
import type { Kysely } from 'kysely';
import { openDatabase } from '../database.ts';
import { troubleOf } from '../database-trouble.ts';
import { openSqlite } from '../sqlite.ts';
import type { Tables } from '../tables.ts';
import { checkRecord } from '../vouch/check-record.ts';
import { type Copied, type CopyOptions, copyRecord } from '../vouch/copy-record.ts';
import { identitySeal } from '../vouch/seals.ts';
import { BackupRefused, type Manifest, readArchive } from './archive.ts';
import { syncFile } from './sync.ts';

/** The fresh record at `fresh`, of what the backup holds. @throws BackupRefused, DatabaseTrouble */
export async function unpackInto(
  archive: string,
  fresh: string,
  at: string,
  onProgress: (done: number, total: number) => void,
): Promise<{ manifest: Manifest; copied: Copied }> {
  const unpacked = `${fresh}.unpacked`;
  try {
    const manifest = await readArchive(archive, unpacked);
    refuseForeign(unpacked);
    const source = await openDatabase(unpacked);
    try {
      const copied = await copyInto(source.db, fresh, { restoredAt: at, onProgress });
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
export async function copyInto(source: Kysely<Tables>, file: string, options: CopyOptions): Promise<Copied> {
  const { db } = await openDatabase(file);
  try {
    return await db.transaction().execute((trx) => copyRecord(source, trx, options));
  } finally {
    await db.destroy();
  }
}

/** Whole, in the present form, in one file that is on the disk. */
export async function checkFilled(file: string, at: string): Promise<void> {
  const { db } = await openDatabase(file);
  try {
    const { record } = await db.selectFrom('identity').select('record').executeTakeFirstOrThrow();
    const identity = { record, restored_at: at };
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

export function removeWithLogs(file: string): void {
  for (const end of ['', '-wal', '-shm']) rmSync(file + end, { force: true });
}
