import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import { troubleOf } from './database-trouble.ts';

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

test.each([
  [{ code: 'SQLITE_CORRUPT' }, 'damaged'],
  [{ code: 'SQLITE_IOERR_WRITE' }, 'disk'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 13 }, 'full'],
  [{ code: 'ERR_SQLITE_ERROR', errcode: 8 + (4 << 8) }, 'read-only'],
  [{ code: 'ECONNREFUSED' }, 'cannot open'],
])('the error %j of a driver is understood as "%s"', (error, kind) => {
  expect(troubleOf(error, 'x.sqlite')).toMatchObject({ kind, message: expect.stringContaining('x.sqlite') });
});

test('any other error is left what it is', () => {
  expect(troubleOf(new TypeError('a mistake'), 'x.sqlite')).toBeUndefined();
});
