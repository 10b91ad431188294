import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  renameSync,
  rmSync,
  writeFileSync,
} from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { DocumentList, DocumentSummary, OperationsAnswer } from '../../record/api.ts';
import type { RecordStanding, RepairAnswer } from '../../record/record-api.ts';
import { type RunningServer, serve } from '../serve.ts';
import { openSqlite } from '../sqlite.ts';

let folder = '';
let server: RunningServer | undefined;
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-care-'));
});
afterEach(async () => {
  await server?.close();
  server = undefined;
  rmSync(folder, { recursive: true, force: true });
});

const file = (name = 'fairbend.sqlite') => join(folder, name);
const start = async () => {
  server = await serve({ dataFolder: folder, port: 0 });
  return server;
};
const end = async () => {
  await server?.close();
  server = undefined;
};

async function ask<T>(path: string, body?: unknown): Promise<{ status: number; body: T }> {
  const headers = { 'content-type': 'application/json' };
  const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
  const response = await fetch(`${server!.address}/api${path}`, init);
  return { status: response.status, body: (await response.json()) as T };
}

async function addBuild(title: string): Promise<string> {
  const changes = [
    { path: ['about', '-', 'title'], value: title },
    { path: ['about', '-', 'note'], value: `what ${title} is` },
  ];
  return (await ask<DocumentSummary>('/documents', { kind: 'build', changes })).body.id;
}

/** As a disk would do it: behind the server's back. */
function damage(sql: string): void {
  const { database } = openSqlite(file());
  database.exec(sql);
  database.close();
}

const spoil = (id: string) =>
  damage(`update operations set new_value = '"something else"' where document = '${id}' and field = 'note'`);

describe('a build one of whose changes is not what was stored', () => {
  test('says so, shows what is good, hinders no other, and comes back from the newest good backup', async () => {
    await start();
    const [brook, lake] = [await addBuild('Brook'), await addBuild('Lake')];
    expect((await ask('/backups', {})).status).toBe(201);
    await ask(`/documents/${lake}/put-away`, {});
    spoil(brook);
    const { body: answer } = await ask<OperationsAnswer>(`/documents/${brook}/operations?after=0`);
    expect(answer.damage).toMatch(/cannot be read as stored.*Repair/);
    expect(answer.operations.map(({ path }) => path[2])).toEqual(['createdAt', 'title']);
    expect((await ask(`/documents/${brook}`)).status).toBe(503);
    expect((await ask(`/documents/${lake}`)).status).toBe(200);
    expect((await ask('/proofs')).status).toBe(200);
    const { body: standing } = await ask<RecordStanding>('/record/check', {});
    expect(standing.damaged).toMatchObject([
      { id: brook, title: 'Brook', what: expect.stringMatching(/1 of its/) },
    ]);
    const { body: repair } = await ask<RepairAnswer>('/record/repair', {});
    expect(repair).toMatchObject({ mended: [{ id: brook }], leftOut: [] });
    expect(existsSync(repair.keptAs!)).toBe(true);
    const again = (await ask<OperationsAnswer>(`/documents/${brook}/operations?after=0`)).body;
    expect(again.damage).toBeUndefined();
    expect(again.operations.at(-1)?.value).toBe('what Brook is');
    // What was done after the backup stays: it was good.
    expect((await ask<DocumentList>('/documents?gone=true')).body.documents.map(({ id }) => id)).toEqual([
      lake,
    ]);
    expect((await ask<RecordStanding>('/record')).body).toMatchObject({ damaged: [] });
  });

  test('is left out of a backup, which names it and counts as no good one; the next good one does', async () => {
    await start();
    const brook = await addBuild('Brook');
    await addBuild('Lake');
    spoil(brook);
    const made = (await ask<{ name: string; damaged: boolean }>('/backups', {})).body;
    expect(made).toMatchObject({ damaged: true, byHand: true });
    expect((await ask<RecordStanding>('/record')).body.backups).toMatchObject({ madeAt: null });
    const restored = await ask(`/backups/${made.name}/restore`, {});
    expect(restored.status).toBe(200);
    const { documents } = (await ask<DocumentList>('/documents?search=Lake')).body;
    expect(documents).toHaveLength(1);
    expect((await ask(`/documents/${brook}`)).status).toBe(404);
  });

  test('and is in no backup stays out, is named, and is kept in the file put aside', async () => {
    await start();
    const brook = await addBuild('Brook');
    spoil(brook);
    const { body } = await ask<RepairAnswer>('/record/repair', {});
    expect(body.leftOut).toMatchObject([{ id: brook, title: 'Brook' }]);
    const { database } = openSqlite(body.keptAs!);
    expect(database.prepare('select title from documents where id = ?').all([brook])).toEqual([
      { title: 'Brook' },
    ]);
    database.close();
  });
});

describe('a start beside what was there before', () => {
  test('on an empty folder with backups names the newest, offers it, and takes it back', async () => {
    await start();
    await addBuild('Brook');
    await ask('/backups', {});
    await end();
    for (const name of readdirSync(folder)) if (/^fairbend\.sqlite/.test(name)) rmSync(file(name));
    const { warnings } = await start();
    expect(warnings.join()).toMatch(/record is empty, but a backup of .* lies beside it/);
    const { found } = (await ask<RecordStanding>('/record')).body;
    expect((await ask(`/backups/${found!.name}/restore`, {})).status).toBe(200);
    expect((await ask<DocumentList>('/documents?search=Brook')).body.total).toBe(1);
    expect((await ask<RecordStanding>('/record')).body.found).toBeNull();
  });

  test('on a file that is none at all names the newest good backup and the whole command', async () => {
    await start();
    const { name } = (await ask<{ name: string }>('/backups', {})).body;
    await end();
    writeFileSync(file(), 'no database at all. '.repeat(100));
    const backup = JSON.stringify(join(folder, 'backups', name));
    const command = `npm run fairbend -- restore ${backup} --data ${JSON.stringify(folder)}`;
    await expect(start()).rejects.toThrow(command);
  });

  test('after a kill between the two steps of a restore has the record as it was', async () => {
    await start();
    await addBuild('Brook');
    await end();
    renameSync(file(), file('fairbend-before-restore-2026-03-01T09-00-00-000Z.sqlite'));
    writeFileSync(file('restore.sqlite.part'), 'what would have come');
    // And what a shop that was being taken in would have left.
    for (const name of ['import.part', 'fairbend-import-y7LGud']) {
      mkdirSync(file(name));
      writeFileSync(join(file(name), 'shop.json'), '{}');
    }
    writeFileSync(file('import.zip.part'), 'half');
    const { warnings } = await start();
    expect(warnings.join()).toMatch(/ended while a backup was being put in place/);
    expect((await ask<DocumentList>('/documents?search=Brook')).body.total).toBe(1);
    expect(readdirSync(folder).filter((name) => /part|before|import/.test(name))).toEqual([]);
  });

  test('with the log deleted says how many changes are missing', async () => {
    await start();
    await end();
    const before = readFileSync(file());
    await start();
    await addBuild('Brook');
    await end();
    writeFileSync(file(), before);
    const { warnings } = await start();
    expect(warnings.join()).toMatch(/3 changes that were saved are missing/);
    expect((await ask<RecordStanding>('/record')).body.lost).toBe(3);
  });

  test('on a file whose pages are damaged makes it anew from what is good and from the backup', async () => {
    await start();
    const ids = [await addBuild('Brook'), await addBuild('Lake')];
    await ask('/backups', {});
    await addBuild('River');
    await end();
    const bytes = readFileSync(file());
    const page = leafOf('operations');
    bytes.fill(0xa5, page * 4096 + 8, page * 4096 + 2000);
    writeFileSync(file(), bytes);
    const { warnings } = await start();
    expect(warnings.join()).toMatch(/was damaged and is made anew.*kept as/);
    for (const id of ids) expect((await ask(`/documents/${id}`)).status).toBe(200);
    expect((await ask<RecordStanding>('/record/check', {})).body.damaged).toEqual([]);
  });
});

/** Number of a page (from 0) that holds rows of this table. */
function leafOf(table: string): number {
  const { database } = openSqlite(file());
  const [{ rootpage }] = database
    .prepare("select rootpage from sqlite_master where type = 'table' and name = ?")
    .all([table]) as { rootpage: number }[];
  database.close();
  return rootpage - 1;
}

test('a database deleted under a running server takes no change any more, and says why', async () => {
  await start();
  await addBuild('Brook');
  rmSync(file());
  const { status, body } = await ask<{ message: string }>('/documents', { kind: 'build' });
  expect(status).toBe(503);
  expect(body.message).toMatch(/moved, deleted or replaced while Fairbend runs; this change was not saved/);
});
