import { mkdtempSync, readdirSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { compileServer, type ServerProcess, startServer } from '../../../test/kit/server-process.ts';
import type { DocumentList, Refusal } from '../../record/api.ts';
import type { BackupNote, RecordStanding } from '../../record/record-api.ts';
import { readServerNote } from '../data-folder.ts';
import { serve } from '../serve.ts';
import { openSqlite } from '../sqlite.ts';

const folder = mkdtempSync(join(tmpdir(), 'fairbend-thread-'));
let server: ServerProcess;
beforeAll(async () => {
  compileServer();
  server = await startServer(folder);
});
afterAll(async () => {
  await server.end('SIGTERM');
  rmSync(folder, { recursive: true, force: true });
});

async function ask<T>(path: string, body?: unknown): Promise<T> {
  const headers = { 'content-type': 'application/json' };
  const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
  return (await (await fetch(`${server.address}/api${path}`, init)).json()) as T;
}

test('a compiled server checks, backs up, restores and repairs in threads of its own', async () => {
  const changes = [{ path: ['about', '-', 'title'], value: 'Brook' }];
  await ask('/documents', { kind: 'build', changes });
  expect(await ask<RecordStanding>('/record/check', {})).toMatchObject({ damaged: [], reading: null });
  const { name } = await ask<BackupNote>('/backups', {});
  expect(await ask(`/backups/${name}/restore`, {})).toMatchObject({ keptAs: expect.any(String) });
  expect((await ask<DocumentList>('/documents?search=brook')).total).toBe(1);
  const { database } = openSqlite(join(folder, 'fairbend.sqlite'));
  database.exec(`update operations set new_value = '"Brock"' where new_value = '"Brook"'`);
  database.close();
  const { mended } = await ask<{ mended: { title: string }[] }>('/record/repair', {});
  expect(mended).toMatchObject([{ title: 'Brook' }]);
  // The words of a refusal come out of the thread as they were.
  expect((await ask<Refusal>('/record/repair', {})).message).toMatch(/all of it is what was stored/);
});

test('with its lock file deleted a second start still finds the server, and leaves its note', async () => {
  rmSync(join(folder, 'server-lock.sqlite'));
  const second = await serve({ dataFolder: folder, port: 0 });
  expect(second).toMatchObject({ alreadyRunning: true, address: server.address });
  expect(readServerNote(folder)?.address).toBe(server.address);
});

test('the record is readable by this account alone', () => {
  if (process.platform === 'win32') return;
  for (const name of readdirSync(folder).filter((name) => /^fairbend\.sqlite/.test(name)))
    expect((statSync(join(folder, name)).mode & 0o077).toString(8), name).toBe('0');
});
