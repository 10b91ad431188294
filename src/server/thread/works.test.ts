/** On SQLite, and with TEST_DATABASE_URL=postgres://… on that server. */
import { mkdtempSync, readdirSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setTimeout as wait } from 'node:timers/promises';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { operation } from '../../../test/kit/one-operation.ts';
import { type ScratchDatabase, scratchDatabase } from '../../../test/kit/scratch-database.ts';
import { compileServer, type ServerProcess, startServer } from '../../../test/kit/server-process.ts';
import type { DocumentList, Refusal } from '../../record/api.ts';
import type { RecordStanding, WorkKind, WorkNote } from '../../record/record-api.ts';
import { ChangeFeed } from '../change-feed.ts';
import { openDatabase } from '../database.ts';
import { Keeper } from '../keeper.ts';

/** Enough that none of it is done before it is called off. */
const changes = 40_000;

const folder = mkdtempSync(join(tmpdir(), 'fairbend-works-'));
let scratch: ScratchDatabase | undefined;
let server: ServerProcess;
let id = '';
beforeAll(async () => {
  compileServer();
  if (process.env.TEST_DATABASE_URL) scratch = await scratchDatabase(process.env.TEST_DATABASE_URL);
  const { repository } = await openDatabase(scratch?.address ?? join(folder, 'fairbend.sqlite'));
  const log = Array.from({ length: changes }, (_, index) => operation(index + 1, `title ${index + 1}`));
  ({ id } = await new Keeper(repository, new ChangeFeed()).createWith('build', log));
  await repository.close();
  server = await startServer(folder, { databaseUrl: scratch?.address });
  expect((await post('/backups')).status).toBe(201);
});
afterAll(async () => {
  await server.end('SIGTERM');
  await scratch?.drop();
  rmSync(folder, { recursive: true, force: true });
});

const post = (path: string, body = '{}') =>
  fetch(`${server.address}/api${path}`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body,
  });
const ask = async <T>(path: string) => (await (await fetch(`${server.address}/api${path}`)).json()) as T;
const works = async () => (await ask<{ works: WorkNote[] }>('/works')).works;

/** Calls it off as soon as it says how far it is; answers what its caller heard. */
async function calledOff(
  kind: WorkKind,
  begun: Promise<Response>,
): Promise<{ status: number; message: string }> {
  for (;;) {
    const work = (await works()).find((one) => one.kind === kind);
    if (!work) {
      await wait(5);
      continue;
    }
    expect((await post(`/works/${work.id}/cancel`)).status).toBe(200);
    const answer = await begun;
    const { message } = (await answer.json()) as Refusal;
    return { status: answer.status, message };
  }
}

const files = () => readdirSync(folder, { recursive: true, encoding: 'utf8' }).sort();

const longWorks: [WorkKind, () => Promise<Response>][] = [
  ['check', () => post('/record/check')],
  ['backup', () => post('/backups')],
  ['shop out', () => fetch(`${server.address}/api/shop/files`)],
  ['build out', () => fetch(`${server.address}/api/documents/${id}/file`)],
  [
    'restore',
    async () =>
      post(`/backups/${(await ask<{ backups: { name: string }[] }>('/backups')).backups[0].name}/restore`),
  ],
];
/** A record on a server of its own is read and backed up there, and not replaced under it. */
const possible = longWorks.filter(([kind]) => !process.env.TEST_DATABASE_URL || /out|backup/.test(kind));

test.each(possible)('work (%s) that is called off says so, and leaves nothing half', async (kind, begin) => {
  const before = files();
  expect(await calledOff(kind, begin())).toEqual({ status: 409, message: 'Called off; nothing was changed' });
  expect(files()).toEqual(before);
  expect((await ask<RecordStanding>('/record')).backups?.failure).toBeNull();
  expect((await ask<DocumentList>('/documents')).documents.find((one) => one.id === id)?.lastSeq).toBe(
    changes,
  );
  expect(await works()).toEqual([]);
});

test('a build file that is called off leaves no build', async () => {
  const text = await (await fetch(`${server.address}/api/documents/${id}/file`)).text();
  const { total } = await ask<DocumentList>('/documents');
  expect((await calledOff('build in', post('/files', text))).status).toBe(409);
  expect((await ask<DocumentList>('/documents')).total).toBe(total);
  // And what was called off can be begun again.
  expect((await post('/files', text)).status).toBe(201);
  expect((await ask<DocumentList>('/documents')).total).toBe(total + 1);
});

test('work that is not there any more cannot be called off', async () => {
  expect((await post('/works/none/cancel')).status).toBe(404);
});
