import { createRequire } from 'node:module';
import type { SqliteDatabase, SqliteStatement } from 'kysely';

export interface OpenedSqlite {
  database: SqliteDatabase & { exec(sql: string): void };
  /** Which driver serves: the runtime's own where it has one. */
  driver: 'node:sqlite' | 'better-sqlite3';
  /** SQLite's online backup to a new file, as the database stands at one moment; others may write meanwhile. */
  backup(file: string): Promise<void>;
}

/** What both drivers have in common. */
interface RawDatabase {
  prepare(sql: string): RawStatement;
  exec(sql: string): unknown;
  close(): void;
  /** better-sqlite3 only; node:sqlite has a function of the module instead. */
  backup?(file: string): Promise<unknown>;
}
interface RawStatement {
  /** better-sqlite3: the statement gives rows. */
  reader?: boolean;
  /** node:sqlite: the columns it gives. */
  columns(): unknown[];
  all(...parameters: unknown[]): unknown[];
  run(...parameters: unknown[]): { changes: number | bigint; lastInsertRowid: number | bigint };
  iterate(...parameters: unknown[]): IterableIterator<unknown>;
}

/** Opens a SQLite file. @throws the driver's error when it cannot; an Error with the remedy without any driver. */
export function openSqlite(file: string): OpenedSqlite {
  const builtIn = builtInDriver();
  const raw = builtIn ? new builtIn(file) : new (betterSqlite())(file);
  const backup = async (copy: string) => {
    // An open reading transaction holds the moment still; without it every write would begin the copy anew.
    raw.exec('BEGIN');
    raw.prepare('SELECT count(*) FROM sqlite_master').all();
    await (raw.backup ? raw.backup(copy) : builtInBackup(raw, copy));
    raw.exec('COMMIT');
  };
  return { database: adapt(raw), driver: builtIn ? 'node:sqlite' : 'better-sqlite3', backup };
}

type Driver = new (file: string) => RawDatabase;

async function builtInBackup(raw: RawDatabase, copy: string): Promise<void> {
  const builtIn = process.getBuiltinModule('node:sqlite') as unknown as {
    backup?(source: RawDatabase, copy: string): Promise<number>;
  };
  if (builtIn.backup) await builtIn.backup(raw, copy);
  else throw new Error('Backups need Node 24, or Node 20 with better-sqlite3');
}

function builtInDriver(): Driver | undefined {
  const builtIn = process.getBuiltinModule?.('node:sqlite') as { DatabaseSync?: Driver } | undefined;
  return builtIn?.DatabaseSync;
}

function betterSqlite(): Driver {
  try {
    const driver = createRequire(import.meta.url)('better-sqlite3') as Driver;
    // The native part is loaded by the first database, not by the module.
    new driver(':memory:').close();
    return driver;
  } catch (cause) {
    throw new Error(
      `No SQLite for Node ${process.version}: it has none of its own, and the package better-sqlite3 does not load. ` +
        'Use Node 24, or run "npm rebuild better-sqlite3" (it needs python3, make and a C++ compiler).',
      { cause },
    );
  }
}

/** Most statements kept prepared. */
const statementsKept = 200;

function adapt(raw: RawDatabase): OpenedSqlite['database'] {
  const prepared = new Map<string, SqliteStatement>();
  return {
    close: () => raw.close(),
    exec: (sql) => void raw.exec(sql),
    prepare(sql) {
      let statement = prepared.get(sql);
      if (!statement) {
        statement = adaptStatement(raw.prepare(sql));
        if (sql === 'rollback') statement = forgiving(statement);
        if (prepared.size >= statementsKept) prepared.clear();
        prepared.set(sql, statement);
      }
      return statement;
    },
  };
}

/**
 * A full disk makes SQLite roll back by itself; the rollback that follows then fails, and would hide the reason.
 */
function forgiving(rollback: SqliteStatement): SqliteStatement {
  return {
    ...rollback,
    run(parameters) {
      try {
        return rollback.run(parameters);
      } catch (error) {
        if (!/no transaction is active/.test((error as Error).message)) throw error;
        return { changes: 0, lastInsertRowid: 0 };
      }
    },
  };
}

function adaptStatement(raw: RawStatement): SqliteStatement {
  return {
    reader: raw.reader ?? raw.columns().length > 0,
    all: (parameters) => raw.all(...parameters),
    run: (parameters) => raw.run(...parameters),
    iterate: (parameters) => raw.iterate(...parameters),
  };
}
