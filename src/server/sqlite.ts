import { backup, DatabaseSync, type SQLInputValue, type StatementSync } from 'node:sqlite';
import type { SqliteDatabase, SqliteStatement } from 'kysely';

export interface OpenedSqlite {
  database: SqliteDatabase & { exec(sql: string): void };
  /** SQLite's online backup to a new file, as the database stands at one moment; others may write meanwhile. */
  backup(file: string): Promise<void>;
}

/** Opens a SQLite file with the runtime's own SQLite. @throws its error when it cannot. */
export function openSqlite(file: string): OpenedSqlite {
  const raw = new DatabaseSync(file);
  return { database: adapt(raw), backup: (copy) => backupAtOneMoment(raw, copy) };
}

/** An open reading transaction holds the moment still; without it every write would begin the copy anew. */
async function backupAtOneMoment(raw: DatabaseSync, copy: string): Promise<void> {
  raw.exec('BEGIN');
  raw.prepare('SELECT count(*) FROM sqlite_master').all();
  await backup(raw, copy);
  raw.exec('COMMIT');
}

/** Most statements kept prepared. */
const statementsKept = 200;

function adapt(raw: DatabaseSync): OpenedSqlite['database'] {
  const prepared = new Map<string, SqliteStatement>();
  return {
    close: () => raw.close(),
    exec: (sql) => raw.exec(sql),
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

function adaptStatement(raw: StatementSync): SqliteStatement {
  const given = (parameters: readonly unknown[]) => parameters as SQLInputValue[];
  return {
    reader: raw.columns().length > 0,
    all: (parameters) => raw.all(...given(parameters)),
    run: (parameters) => raw.run(...given(parameters)),
    iterate: (parameters) => raw.iterate(...given(parameters)),
  };
}
