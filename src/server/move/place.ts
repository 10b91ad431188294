import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import type { Kysely } from 'kysely';
import { lockFolder, openDataFolder } from '../data-folder.ts';
import { openDatabase } from '../database.ts';
import { DatabaseTrouble, isServer, troubleOf, withoutPassword } from '../database-trouble.ts';
import { FileSessions } from '../sharing/file-sessions.ts';
import type { StoredSession } from '../sharing/sessions.ts';
import { sessionLivesMs } from '../sharing/sessions.ts';
import type { Tables } from '../tables.ts';

/** It cannot be moved from here or to here; nothing was changed. */
export class MoveRefused extends Error {}

/** A database held alone, while no server uses it. */
export interface Place {
  db: Kysely<Tables>;
  name: string;
  /** Of devices that are still paired. */
  sessions(): Promise<StoredSession[]>;
  takeSessions(sessions: readonly StoredSession[]): Promise<void>;
  close(): Promise<void>;
}

/** @throws MoveRefused when a server uses it, or nothing is there; DatabaseTrouble */
export function openPlace(place: string, options: { mustExist: boolean; now: Date }): Promise<Place> {
  return isServer(place) ? openServer(place, options.now) : openFolder(resolve(place), options);
}

async function openFolder(
  path: string,
  { mustExist, now }: { mustExist: boolean; now: Date },
): Promise<Place> {
  const { databaseFile } = mustExist && !existsSync(path) ? { databaseFile: '' } : openDataFolder(path);
  if (mustExist && !existsSync(databaseFile))
    throw new MoveRefused(`There is no record in ${path}. Give the data folder that Settings shows`);
  const lock = lockFolder(path);
  if (!lock) throw new MoveRefused(`A server uses ${path}. End it first, then move`);
  try {
    const { db } = await openDatabase(databaseFile);
    const kept = new FileSessions(path, () => now);
    return {
      db,
      name: path,
      sessions: async () => kept.living(),
      takeSessions: async (sessions) => void (sessions.length > 0 && kept.take(sessions)),
      async close() {
        await db.destroy();
        lock.release();
      },
    };
  } catch (error) {
    lock.release();
    throw error;
  }
}

async function openServer(address: string, now: Date): Promise<Place> {
  const name = withoutPassword(address);
  const { default: pg } = await import('pg');
  const { usedLock } = await import('../postgres/postgres-feed.ts');
  const holder = new pg.Client({ connectionString: address });
  holder.on('error', () => undefined);
  try {
    await holder.connect();
    const { rows } = await holder.query('select pg_try_advisory_lock($1, $2) as free', [...usedLock]);
    if (!rows[0].free) throw new MoveRefused(`A server uses ${name}. End it first, then move`);
    const { db } = await openDatabase(address);
    return {
      db,
      name,
      sessions: () => livingSessions(db, now),
      takeSessions: (sessions) => storeSessions(db, sessions),
      async close() {
        await db.destroy();
        await holder.end();
      },
    };
  } catch (error) {
    await holder.end().catch(() => undefined);
    if (error instanceof MoveRefused || error instanceof DatabaseTrouble) throw error;
    throw troubleOf(error, address) ?? error;
  }
}

async function livingSessions(db: Kysely<Tables>, now: Date): Promise<StoredSession[]> {
  const oldest = new Date(now.getTime() - sessionLivesMs).toISOString();
  const found = await db.selectFrom('sessions').where('paired_at', '>', oldest).selectAll().execute();
  return found.map(({ id, name, paired_at, hash }) => ({ id, name, pairedAt: paired_at, hash }));
}

async function storeSessions(db: Kysely<Tables>, sessions: readonly StoredSession[]): Promise<void> {
  if (sessions.length === 0) return;
  await db
    .insertInto('sessions')
    .values(sessions.map(({ id, name, pairedAt, hash }) => ({ id, name, paired_at: pairedAt, hash })))
    .onConflict((conflict) => conflict.doNothing())
    .execute();
}
