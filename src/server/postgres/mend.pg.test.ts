import { mkdtempSync, readFileSync, rmSync, statSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import pg from 'pg';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { operation } from '../../../test/kit/one-operation.ts';
import { type ScratchDatabase, scratchDatabase } from '../../../test/kit/scratch-database.ts';
import type { DocumentSummary, OperationsAnswer } from '../../record/api.ts';
import type { BackupNote, RecordStanding, RepairAnswer } from '../../record/record-api.ts';
import { type RunningServer, serve } from '../serve.ts';

let folder = '';
let scratch: ScratchDatabase;
let server: RunningServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-mend-'));
  scratch = await scratchDatabase();
  server = await serve({ dataFolder: folder, databaseUrl: scratch.address, port: 0 });
});
afterEach(async () => {
  await server.close();
  await scratch.drop();
  rmSync(folder, { recursive: true, force: true });
});

async function ask<T>(path: string, body?: unknown): Promise<{ status: number; body: T }> {
  const headers = { 'content-type': 'application/json' };
  const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
  const response = await fetch(`${server.address}/api${path}`, init);
  return { status: response.status, body: (await response.json()) as T };
}

async function addBuild(title: string): Promise<string> {
  const changes = [
    { path: ['about', '-', 'title'], value: title },
    { path: ['about', '-', 'note'], value: `what ${title} is` },
  ];
  return (await ask<DocumentSummary>('/documents', { kind: 'build', changes })).body.id;
}

async function addPicture(): Promise<string> {
  const png = new Uint8Array(encode({ width: 16, height: 16, channels: 1, data: new Uint8Array(256) }));
  const sent = await fetch(`${server.address}/api/attachments`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream' },
    body: png,
  });
  return ((await sent.json()) as { hash: string }).hash;
}

const rename = (id: string, clock: number, title: string) =>
  ask(`/documents/${id}/operations`, { operations: [operation(clock, title)] });
const titles = async (id: string) =>
  (await ask<OperationsAnswer>(`/documents/${id}/operations?after=0`)).body.operations
    .filter(({ path }) => path[2] === 'title')
    .map(({ value }) => value);

/** As a disk would do it: behind the server's back. */
async function damage(statement: string, ...values: string[]): Promise<void> {
  const client = new pg.Client({ connectionString: scratch.address });
  await client.connect();
  await client.query(statement, values);
  await client.end();
}

const spoil = (id: string) =>
  damage(`update operations set new_value = '"something else"' where document = $1 and field = 'note'`, id);

describe('a record on PostgreSQL of which something is not what was stored', () => {
  test('is mended where it stands: that document and picture from the newest good backup, nothing else', async () => {
    const [brook, lake, picture] = [await addBuild('Brook'), await addBuild('Lake'), await addPicture()];
    const good = (await ask<BackupNote>('/backups', {})).body;
    expect(good).toMatchObject({ byHand: true, damaged: false });
    await rename(brook, 50, 'Brook again');
    await rename(lake, 50, 'Lake again');
    await spoil(brook);
    await damage(`update attachments set bytes = 'x' where hash = $1`, picture);

    expect((await ask(`/documents/${brook}`)).status).toBe(503);
    expect((await ask(`/documents/${lake}`)).status).toBe(200);
    expect((await ask<BackupNote>('/backups', {})).body.damaged).toBe(true);
    const { damaged } = (await ask<RecordStanding>('/record/check', {})).body;
    expect(damaged.map(({ id }) => id)).toEqual([brook, picture]);
    const repair = (await ask<RepairAnswer>('/record/repair', {})).body;
    expect(repair).toMatchObject({ mended: [{ id: brook }, { id: picture }], leftOut: [] });

    expect((await ask<RecordStanding>('/record')).body.damaged).toEqual([]);
    const { operations } = (await ask<OperationsAnswer>(`/documents/${brook}/operations?after=0`)).body;
    expect(operations.find(({ path }) => path[2] === 'note')?.value).toBe('what Brook is');
    // What came after the backup was good, and stays.
    expect(await titles(brook)).toEqual(['Brook', 'Brook again']);
    expect(await titles(lake)).toEqual(['Lake', 'Lake again']);
    expect((await fetch(`${server.address}/api/attachments/${picture}`)).status).toBe(200);
    expect((await rename(brook, 60, 'Brook a third time')).status).toBe(200);
    // What stood there is kept, for nobody else to read.
    expect(readFileSync(repair.keptAs!, 'utf8')).toContain('something else');
    expect(statSync(repair.keptAs!).mode & 0o077).toBe(0);
    expect((await ask('/record/repair', {})).status).toBe(409);
  });

  test('and is in no backup stays as it is, and is named', async () => {
    const brook = await addBuild('Brook');
    await spoil(brook);
    const { body } = await ask<RepairAnswer>('/record/repair', {});
    expect(body).toMatchObject({ mended: [], leftOut: [{ id: brook, title: 'Brook' }] });
    expect(await titles(brook)).toEqual(['Brook']);
    expect((await ask<RecordStanding>('/record')).body.damaged).toMatchObject([{ id: brook }]);
  });

  test('a whole backup is not swapped under other servers: how it goes is said', async () => {
    const { name } = (await ask<BackupNote>('/backups', {})).body;
    const refused = await ask<{ message: string }>(`/backups/${name}/restore`, {});
    expect(refused.status).toBe(409);
    expect(refused.body.message).toMatch(/restore .* --data .*move --from/);
  });
});
