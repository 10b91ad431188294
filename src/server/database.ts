import { chmodSync } from 'node:fs';
import { type Dialect, Kysely, PostgresDialect, SqliteDialect } from 'kysely';
import { Migrator } from 'kysely/migration';
import { DatabaseTrouble, isServer, troubleOf } from './database-trouble.ts';
import { migrations } from './migrations/index.ts';
import type { Repository } from './repository.ts';
import { SqlRepository } from './sql-repository.ts';
import { openSqlite } from './sqlite.ts';
import type { Tables } from './tables.ts';

export interface OpenedDatabase {
  db: Kysely<Tables>;
  repository: Repository;
  /** For people: which database, through what. */
  description: string;
}

/**
 * Opens the database and brings it to the present form.
 * @param place a SQLite file, or a postgres:// address
 * @throws DatabaseTrouble in words for the builder; a database that is damaged or newer is left as it is
 */
export async function openDatabase(place: string): Promise<OpenedDatabase> {
  const { dialect, description, repositoryOn } = isServer(place) ? await postgres(place) : sqlite(place);
  const db = new Kysely<Tables>({ dialect });
  try {
    await migrate(db, place);
  } catch (error) {
    await db.destroy();
    throw troubleOf(error, place) ?? error;
  }
  return { db, repository: repositoryOn(db), description };
}

/** A SQLite file as it is, damaged or not, for reading what is left; nothing is looked at or brought to a new form. */
export function openUnchecked(file: string): Kysely<Tables> {
  const { database } = openSqlite(file);
  for (const pragma of ['query_only=ON', 'trusted_schema=OFF']) database.exec(`PRAGMA ${pragma}`);
  return new Kysely<Tables>({ dialect: new SqliteDialect({ database }) });
}

interface ChosenDialect {
  dialect: Dialect;
  description: string;
  repositoryOn(db: Kysely<Tables>): Repository;
}

/**
 * WAL: readers do not wait for a writer. FULL: what was acknowledged is on the disk. Untrusted: what a foreign file
 * brings along besides its rows does nothing. Secure: what was erased is not left in the file's free room.
 */
const pragmas = [
  'busy_timeout=5000',
  'trusted_schema=OFF',
  'secure_delete=ON',
  'journal_mode=WAL',
  'synchronous=FULL',
  'foreign_keys=ON',
];

function sqlite(file: string): ChosenDialect {
  try {
    const { database } = openSqlite(file);
    keepToOwner(file);
    for (const pragma of pragmas) database.exec(`PRAGMA ${pragma}`);
    const [{ quick_check: verdict }] = database.prepare('PRAGMA quick_check(1)').all([]) as {
      quick_check: string;
    }[];
    if (verdict !== 'ok') throw new DatabaseTrouble('damaged', file, verdict);
    return {
      dialect: new SqliteDialect({ database }),
      description: 'SQLite',
      repositoryOn: (db) => new SqlRepository(db),
    };
  } catch (error) {
    throw troubleOf(error, file) ?? error;
  }
}

/** Customers' names are nobody else's; the logs beside the file get its rights. Where there are none (Windows), so be it. */
function keepToOwner(file: string): void {
  try {
    if (file !== ':memory:') chmodSync(file, 0o600);
  } catch {
    // It may be another account's, and still be written: that account's to say who reads it.
  }
}

/** PostgreSQL allows a hundred in all by default, which several server processes share. */
const connectionsOfServer = 16;

/** The driver is loaded here: a start on SQLite, the usual one, need not wait for it. */
async function postgres(address: string): Promise<ChosenDialect> {
  const [{ default: pg }, { PostgresRepository }] = await Promise.all([
    import('pg'),
    import('./postgres/postgres-repository.ts'),
  ]);
  // bigint comes as text by default; clocks and counters stay far below 2^53.
  const types = {
    getTypeParser: ((oid: number, format?: 'text') =>
      oid === pg.types.builtins.INT8 ? Number : pg.types.getTypeParser(oid, format)) as never,
  };
  const pool = new pg.Pool({
    connectionString: address,
    types,
    max: connectionsOfServer,
    connectionTimeoutMillis: 5000,
    // The server ends a statement that takes this long; where it does not even answer, the wait for it ends.
    statement_timeout: 8000,
    lock_timeout: 5000,
    idle_in_transaction_session_timeout: 60_000,
    query_timeout: 10_000,
    keepAlive: true,
  });
  // A connection that dies fails the query it carries, and is replaced; its event, unheard, would end the process.
  pool.on('error', () => undefined);
  pool.on('connect', (client) => void client.on('error', () => undefined));
  return {
    dialect: new PostgresDialect({ pool }),
    description: 'PostgreSQL',
    repositoryOn: (db) => new PostgresRepository(db, pool),
  };
}

async function migrate(db: Kysely<Tables>, place: string): Promise<void> {
  const migrator = new Migrator({ db, provider: { getMigrations: async () => migrations } });
  const done = (await migrator.getMigrations()).filter((migration) => migration.executedAt);
  await refuseNewer(db, done.length, place);
  const { error } = await migrator.migrateToLatest();
  const said = (error as Error | undefined)?.message ?? '';
  // What was done once is to be done again: the list of what was done is not what was stored.
  if (/corrupted migrations|already exists|duplicate column/.test(said))
    throw new DatabaseTrouble('damaged', place, 'its list of migrations');
  if (error) throw error;
}

/** A database on which migrations ran that this version does not know was used by a later one. */
async function refuseNewer(db: Kysely<Tables>, known: number, place: string): Promise<void> {
  const tables = await db.introspection.getTables({ withInternalKyselyTables: true });
  if (!tables.some((table) => table.name === 'kysely_migration')) return;
  const { total } = await db
    .selectFrom('kysely_migration' as never)
    .select((e) => e.fn.countAll<number>().as('total'))
    .executeTakeFirstOrThrow();
  if (Number(total) > known) throw new DatabaseTrouble('newer', place);
}
