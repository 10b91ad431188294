import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import { ChangeFeed } from './change-feed.ts';
import { openDatabase } from './database.ts';
import { troubleOf } from './database-trouble.ts';
import { Keeper } from './keeper.ts';
import { SqlRepository } from './sql-repository.ts';
import { openSqlite } from './sqlite.ts';

/** What a disk does to SQLite, brought about by SQLite's own means. */
describe.skipIf(process.env.TEST_DATABASE_URL)('a change that cannot be written', () => {
  let bench: TestApp;
  let build = '';
  beforeEach(async () => {
    vi.spyOn(console, 'error').mockImplementation(() => undefined);
    bench = await testApp();
    build = (await bench.keeper.create({ kind: 'build' })).id;
  });
  afterEach(async () => {
    vi.restoreAllMocks();
    await bench.close();
  });

  /** One change with a text of this length. */
  const write = (clock: number, length: number) =>
    bench.ask('POST', `/api/documents/${build}/operations`, {
      operations: [
        {
          id: `d1-a.${clock}.0`,
          device: 'd1-a',
          clock,
          gesture: `edit.${clock}`,
          path: ['about', '-', 'note'],
          old: null,
          value: 'x'.repeat(length),
          at: '2026-03-01T09:00:00Z',
        },
      ],
    });
  const pragma = (text: string) => sql.raw(`PRAGMA ${text}`).execute(bench.db);

  test('on a full disk is not acknowledged and not half stored; with room made it goes through', async () => {
    await pragma('max_page_count=1');
    const before = await bench.counts();
    let clock = 5;
    let response = await write(clock, 15_000);
    for (; response.status === 200 && clock < 50; clock++) response = await write(clock + 1, 15_000);
    expect(response.status).toBe(507);
    expect((await response.json()).message).toMatch(/disk.*is full.*not saved.*Make room/);
    expect((await bench.counts()).operations).toBe(before.operations + clock - 5);
    await pragma('max_page_count=1000000');
    expect((await write(clock, 15_000)).status).toBe(200);
  });

  test('into a file that may not be written says so, and what can be done', async () => {
    await pragma('query_only=ON');
    const response = await write(5, 10);
    expect(response.status).toBe(503);
    expect((await response.json()).message).toMatch(/may not be written.*right to write.*--data/);
    await pragma('query_only=OFF');
    expect((await write(5, 10)).status).toBe(200);
  });
});

test.skipIf(process.env.TEST_DATABASE_URL)(
  'a file locked by another program says so, stores nothing, and takes the change once it is free',
  async () => {
    const folder = mkdtempSync(join(tmpdir(), 'fairbend-locked-'));
    const file = join(folder, 'shop.sqlite');
    const { db } = await openDatabase(file);
    await sql.raw('PRAGMA busy_timeout=20').execute(db);
    const keeper = new Keeper(new SqlRepository(db), new ChangeFeed());
    const other = openSqlite(file).database;
    other.exec('BEGIN IMMEDIATE');
    const refused = await keeper.create({ kind: 'build' }).catch((error: unknown) => error);
    expect(troubleOf(refused, file)).toMatchObject({
      kind: 'busy',
      message: `Another program holds the database ${file} locked. Close that program, then try again`,
    });
    other.exec('ROLLBACK');
    const { id } = await keeper.create({ kind: 'build' });
    const list = { kind: 'build', search: '', gone: false, limit: 5, offset: 0 } as const;
    expect((await keeper.repository.list(list)).documents.map((document) => document.id)).toEqual([id]);
    other.close();
    await db.destroy();
    rmSync(folder, { recursive: true });
  },
);

test.each([
  [{ code: 'ERR_SQLITE_ERROR', errcode: 11 }, 'damaged'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 5 + (2 << 8) }, 'busy'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 5 }, 'busy'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 10 + (3 << 8) }, 'disk'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 13 }, 'full'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 8 + (4 << 8) }, 'read-only'],
  [{ code: 'ENOSPC' }, 'full'],
  [{ code: 'ECONNREFUSED' }, 'cannot open'],
  [{ code: '53100' }, 'full'],
  [{ code: '25006' }, 'read-only'],
  [{ code: '55P03' }, 'busy'],
  [{ code: 'XX001' }, 'damaged'],
  [{ code: '57P01' }, 'cannot open'],
])('the error %j of a driver is understood as "%s"', (error, kind) => {
  expect(troubleOf(error, 'x.sqlite')).toMatchObject({ kind, message: expect.stringContaining('x.sqlite') });
});

test('any other error is left what it is', () => {
  expect(troubleOf(new TypeError('a mistake'), 'x.sqlite')).toBeUndefined();
});
