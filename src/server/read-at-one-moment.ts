import { type Kysely, sql } from 'kysely';
import { openDatabase, openUnchecked } from './database.ts';
import { isServer } from './database-trouble.ts';
import type { Repository } from './repository.ts';
import { SqlRepository } from './sql-repository.ts';
import type { Tables } from './tables.ts';

/**
 * Reads a record through a connection of its own, all of it as it stood at one moment, while others write.
 * @param place a SQLite file, or a postgres:// address; nothing is written there
 */
export async function readAtOneMoment<T>(
  place: string,
  read: (repository: Repository, db: Kysely<Tables>) => Promise<T>,
): Promise<T> {
  if (!isServer(place)) return readFileAtOneMoment(place, read);
  const { db } = await openDatabase(place);
  try {
    const reading = db.transaction().setIsolationLevel('repeatable read').setAccessMode('read only');
    return await reading.execute((trx) => read(new SqlRepository(trx), trx));
  } finally {
    await db.destroy();
  }
}

async function readFileAtOneMoment<T>(
  file: string,
  read: (repository: Repository, db: Kysely<Tables>) => Promise<T>,
): Promise<T> {
  const db = openUnchecked(file);
  try {
    await sql`begin`.execute(db);
    return await read(new SqlRepository(db), db);
  } finally {
    await db.destroy();
  }
}
