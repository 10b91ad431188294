import { chmodSync, mkdirSync, mkdtempSync, readFileSync, rmSync, statSync, writeFileSync } from 'node:fs';
import { createServer } from 'node:http';
import { connect } from 'node:net';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { sql } from 'kysely';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { defaultDataFolder } from './data-folder.ts';
import { openDatabase } from './database.ts';
import { listen } from './listen.ts';
import { type RunningServer, type ServeOptions, serve } from './serve.ts';
import { openSqlite } from './sqlite.ts';

let folder = '';
const running: RunningServer[] = [];
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-serve-'));
});
afterEach(async () => {
  for (const server of running.splice(0)) await server.close();
  rmSync(folder, { recursive: true, force: true });
});

async function start(options: Partial<ServeOptions> = {}): Promise<RunningServer> {
  const server = await serve({ dataFolder: folder, port: 0, ...options });
  running.push(server);
  return server;
}

test('serves on this computer alone, says what it is, and ends', async () => {
  const server = await start();
  expect(server.address).toMatch(/^http:\/\/127\.0\.0\.1:\d+$/);
  const info = await (await fetch(`${server.address}/api/info`)).json();
  expect(info).toMatchObject({ app: 'fairbend', dataFolder: folder });
  await running.pop()!.close();
  await expect(fetch(`${server.address}/api/info`)).rejects.toThrow();
});

test('a second server on one data folder starts nothing and names the first', async () => {
  const first = await start();
  const second = await start();
  expect(second).toMatchObject({ alreadyRunning: true, address: first.address });
  await second.close();
  expect((await fetch(`${first.address}/api/info`)).status).toBe(200);
});

test('what a server of another folder left as its address keeps nobody out', async () => {
  const first = await start();
  const other = mkdtempSync(join(tmpdir(), 'fairbend-other-'));
  writeFileSync(join(other, 'server.json'), JSON.stringify({ address: first.address, pid: 1 }));
  expect((await start({ dataFolder: other })).alreadyRunning).toBe(false);
});

test.skipIf(process.platform === 'win32')('the data folder is closed to other accounts', async () => {
  chmodSync(folder, 0o755);
  await start();
  expect(statSync(folder).mode & 0o777).toBe(0o700);
});

test.runIf(process.platform === 'linux')('https too listens only where it was told to', async () => {
  const { tlsPort } = await start({ share: true, tls: true, tlsPort: 0, host: '127.0.0.1' });
  const reached = (address: string) =>
    new Promise((resolve) => {
      const socket = connect(tlsPort!, address, () => resolve(socket.destroy() && true));
      socket.once('error', () => resolve(false));
    });
  expect([await reached('127.0.0.1'), await reached('127.0.0.2')]).toEqual([true, false]);
});

test('after the end the folder is free again, and the record is there', async () => {
  const first = await start();
  const made = await fetch(`${first.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build', changes: [{ path: ['about', '-', 'title'], value: 'Brook' }] }),
  });
  const { id } = (await made.json()) as { id: string };
  await running.pop()!.close();
  const second = await start();
  expect(second.alreadyRunning).toBe(false);
  expect(await (await fetch(`${second.address}/api/documents/${id}`)).json()).toMatchObject({
    document: { title: 'Brook' },
  });
});

test('an event stream kept open does not keep the server', async () => {
  const server = await start();
  const { id } = (await (await fetch(`${server.address}/api/shop`)).json()) as { id: string };
  const stream = await fetch(`${server.address}/api/events?after=${id}:0`);
  await stream.body!.getReader().read();
  await running.pop()!.close();
});

describe('the port', () => {
  test('wanted but taken is an error that names it', async () => {
    const other = createServer();
    const port = await listen(other, '127.0.0.1', 0);
    await expect(start({ port })).rejects.toThrow(new RegExp(`Port ${port} .*in use.*--port`));
    other.close();
    expect((await start()).alreadyRunning).toBe(false);
  });

  test('usual but taken gives way to the next free one', async () => {
    const others = [createServer(), createServer()];
    const first = await listen(others[0], '127.0.0.1', undefined);
    const second = await listen(others[1], '127.0.0.1', undefined);
    expect(second).toBeGreaterThan(first);
    for (const other of others) other.close();
  });
});

describe('a start that cannot be says why, and changes nothing', () => {
  const file = () => join(folder, 'fairbend.sqlite');

  test('no database at all', async () => {
    const text = 'not a database, but long enough to be looked at as one. '.repeat(50);
    writeFileSync(file(), text);
    await expect(start()).rejects.toThrow(/fairbend\.sqlite is damaged; nothing in it was changed.*backup/);
    expect(readFileSync(file(), 'utf8')).toBe(text);
  });

  test('a damaged page', async () => {
    const server = await start();
    await server.close();
    running.pop();
    const bytes = readFileSync(file());
    bytes.fill(0xa5, 4096 * 2, 4096 * 4);
    writeFileSync(file(), bytes);
    // All of the record is still readable here: it is made anew, and the damaged file is kept as it was.
    const { warnings } = await start();
    const [, keptAs] = /was damaged and is made anew.*kept as (\S+\.sqlite)/.exec(warnings.join())!;
    expect(readFileSync(keptAs).equals(bytes)).toBe(true);
  });

  test('a database of a newer Fairbend', async () => {
    const server = await start();
    await server.close();
    running.pop();
    const { database } = openSqlite(file());
    database.exec("insert into kysely_migration values ('9999-later', '2030-01-01T00:00:00Z')");
    database.close();
    await expect(start()).rejects.toThrow(/written by a newer Fairbend.*Update/);
  });

  test('a file where the folder should be', async () => {
    writeFileSync(join(folder, 'taken'), '');
    await expect(start({ dataFolder: join(folder, 'taken') })).rejects.toThrow(/cannot be opened.*--data/);
  });

  test('a folder where the database should be', async () => {
    mkdirSync(file());
    await expect(start()).rejects.toThrow(/cannot be opened/);
  });

  test('and lets the folder go', async () => {
    writeFileSync(file(), 'x'.repeat(2000));
    await expect(start()).rejects.toThrow();
    rmSync(file());
    expect((await start()).alreadyRunning).toBe(false);
  });
});

test('the database is safe to pull the plug on: WAL, every commit synced, references checked', async () => {
  const { db } = await openDatabase(join(folder, 'x.sqlite'));
  const pragma = async (name: string) => (await sql.raw(`PRAGMA ${name}`).execute(db)).rows;
  expect(await pragma('journal_mode')).toEqual([{ journal_mode: 'wal' }]);
  expect(await pragma('synchronous')).toEqual([{ synchronous: 2 }]);
  expect(await pragma('foreign_keys')).toEqual([{ foreign_keys: 1 }]);
  await db.destroy();
});

test.each([
  ['linux', { HOME: '/h' }, /\/\.local\/share\/fairbend$/],
  ['linux', { XDG_DATA_HOME: '/x' }, /^\/x\/fairbend$/],
  ['darwin', {}, /\/Library\/Application Support\/Fairbend$/],
  ['win32', { APPDATA: '/a' }, /^\/a\/Fairbend$/],
  ['linux', { FAIRBEND_DATA: '/f', XDG_DATA_HOME: '/x' }, /^\/f$/],
] as const)('the data folder on %s with %j', (platform, env, expected) => {
  expect(defaultDataFolder(env as NodeJS.ProcessEnv, platform)).toMatch(expected);
});
