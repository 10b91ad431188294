import { copyFileSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { strToU8, zipSync } from 'fflate';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { serve } from '../serve.ts';
import { openSqlite } from '../sqlite.ts';
import { makeBackup } from './make-backup.ts';
import { restoreBackup } from './restore-backup.ts';

let folder = '';
beforeEach(() => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-backup-'));
});
afterEach(() => rmSync(folder, { recursive: true, force: true }));

const file = (name: string) => join(folder, name);
const at = new Date('2026-03-01T09:00:00Z');

/** By what every row is called: a restore writes them anew. */
const ordered: Record<string, string> = {
  documents: 'id',
  operations: 'document, seq',
  attachments: 'hash',
  revisions: 'document, revision',
  identity: 'record',
};

/** All rows of a record. */
function rowsOf(data: string): Record<string, unknown[]> {
  const { database } = openSqlite(join(data, 'fairbend.sqlite'));
  const tables = ['documents', 'operations', 'attachments', 'revisions', 'identity'];
  const rows = tables.map((table) => [
    table,
    database
      .prepare(`select ${table === 'identity' ? 'record' : '*'} from ${table} order by ${ordered[table]}`)
      .all([]),
  ]);
  database.close();
  return Object.fromEntries(rows.map(([table, found]) => [table, found]));
}

async function withServer(data: string, work: (address: string) => Promise<void>): Promise<void> {
  const server = await serve({ dataFolder: data, port: 0 });
  await work(server.address).finally(() => server.close());
}

async function addBuild(address: string, title: string): Promise<void> {
  const response = await fetch(`${address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build', changes: [{ path: ['about', '-', 'title'], value: title }] }),
  });
  expect(response.status).toBe(201);
}

const backUp = (out: string) =>
  makeBackup({
    databaseFile: file('data/fairbend.sqlite'),
    out: file(out),
    madeAt: at.toISOString(),
    writtenBy: 'test',
  });

describe('a backup made while the server runs', () => {
  test('restored elsewhere has every row there was, and a server starts on it', async () => {
    await withServer(file('data'), async (address) => {
      await addBuild(address, 'Brook');
      await backUp('b.zip');
    });
    const { keptAs } = await restoreBackup(file('b.zip'), file('other'), at);
    expect(keptAs).toBeUndefined();
    expect(rowsOf(file('other'))).toEqual(rowsOf(file('data')));
    expect(rowsOf(file('other')).operations.length).toBeGreaterThan(1);
    await withServer(file('other'), async (address) => {
      const list = await (await fetch(`${address}/api/documents?search=brook`)).json();
      expect(list).toMatchObject({ total: 1 });
    });
  });

  test('restored in place brings that state back and keeps what stood there', async () => {
    await withServer(file('data'), (address) => addBuild(address, 'Brook'));
    await backUp('b.zip');
    const then = rowsOf(file('data'));
    await withServer(file('data'), (address) => addBuild(address, 'Lake'));
    const later = rowsOf(file('data'));
    const { keptAs } = await restoreBackup(file('b.zip'), file('data'), at);
    expect(rowsOf(file('data'))).toEqual(then);
    rmSync(file('again'), { recursive: true, force: true });
    await withServer(file('again'), async () => undefined);
    for (const end of ['', '-wal', '-shm']) rmSync(file(`again/fairbend.sqlite${end}`), { force: true });
    copyFileSync(keptAs!, file('again/fairbend.sqlite'));
    expect(rowsOf(file('again'))).toEqual(later);
  });

  test('is of one moment, whatever is written meanwhile', async () => {
    await withServer(file('data'), async (address) => {
      const writing = Promise.all(Array.from({ length: 30 }, (_, n) => addBuild(address, `Rod ${n}`)));
      await backUp('b.zip');
      await writing;
    });
    await restoreBackup(file('b.zip'), file('other'), at);
    const { documents, operations } = rowsOf(file('other')) as Record<string, { last_seq: number }[]>;
    expect(operations.length).toBe(documents.reduce((sum, row) => sum + row.last_seq, 0));
  });

  test('is not restored under a running server', async () => {
    await withServer(file('data'), async () => {
      await backUp('b.zip');
      await expect(restoreBackup(file('b.zip'), file('data'), at)).rejects.toThrow(/End it first/);
    });
  });
});

describe('a backup restored on a running server', () => {
  const ask = async (address: string, path: string, body?: unknown) => {
    const headers = { 'content-type': 'application/json' };
    const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
    const response = await fetch(`${address}/api${path}`, init);
    return { status: response.status, body: await response.json() };
  };
  /** The first events of a page's feed. */
  async function* events(address: string, after: string): AsyncGenerator<{ event: string; data: string }> {
    const response = await fetch(`${address}/api/events?after=${after}`);
    let text = '';
    for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
      const parts = (text + chunk).split('\n\n');
      text = parts.pop()!;
      for (const part of parts) {
        const [, event, data] = /^event: (.*)\ndata: (.*)$/m.exec(part) ?? [];
        if (event) yield { event, data };
      }
    }
  }

  test('brings that state back, keeps what stood there, and tells open pages; the server goes on', async () => {
    await withServer(file('data'), async (address) => {
      await addBuild(address, 'Brook');
      const made = await ask(address, '/backups', {});
      expect(made.status).toBe(201);
      await addBuild(address, 'Lake');
      const page = events(address, 'demo:0');
      const before = JSON.parse((await page.next()).value!.data);
      expect(before).toMatchObject({ restoredAt: '' });
      const { status, body } = await ask(address, `/backups/${made.body.name}/restore`, {});
      expect(status, JSON.stringify(body)).toBe(200);
      expect(body).toMatchObject({
        madeAt: made.body.madeAt,
        keptAs: expect.stringMatching(/before-restore/),
      });
      // The old feed ends; asked for again, it opens with another record.
      let left = await page.next();
      while (!left.done) left = await page.next();
      const again = events(address, 'demo:0');
      const opening = JSON.parse((await again.next()).value!.data);
      expect(opening.record).toBe(before.record);
      expect(Date.parse(opening.restoredAt)).toBeGreaterThan(0);
      await again.return(undefined);
      const titles = async () =>
        (await ask(address, '/documents')).body.documents.map(({ title }: { title: string }) => title);
      expect(await titles()).toContain('Brook');
      expect(await titles()).not.toContain('Lake');
      await addBuild(address, 'River');
      expect(await titles()).toContain('River');
    });
    await withServer(file('data'), async (address) => {
      expect((await ask(address, '/documents?search=river')).body.total).toBe(1);
    });
  });

  test('loses no change that is acknowledged while it goes on: each is in the old or in the new', async () => {
    let keptAs = '';
    const acknowledged: string[] = [];
    await withServer(file('data'), async (address) => {
      const made = await ask(address, '/backups', {});
      let over = false;
      const writing = [0, 1, 2].map(async (writer) => {
        for (let count = 0; !over; count++) {
          const title = `rod-${writer}-${count}`;
          const changes = [{ path: ['about', '-', 'title'], value: title }];
          const { status } = await ask(address, '/documents', { kind: 'build', changes });
          expect(status).toBe(201);
          acknowledged.push(title);
        }
      });
      const restored = await ask(address, `/backups/${made.body.name}/restore`, {});
      over = true;
      await Promise.all(writing);
      keptAs = restored.body.keptAs;
    });
    const titlesIn = (path: string) => {
      const { database } = openSqlite(path);
      const found = database.prepare('select title from documents').all([]) as { title: string }[];
      database.close();
      return found.map(({ title }) => title);
    };
    const kept = new Set([...titlesIn(keptAs), ...titlesIn(file('data/fairbend.sqlite'))]);
    expect(acknowledged.length).toBeGreaterThan(0);
    expect(acknowledged.filter((title) => !kept.has(title))).toEqual([]);
  });

  test('that is damaged is refused, and nothing is changed', async () => {
    await withServer(file('data'), async (address) => {
      await addBuild(address, 'Brook');
      const { body } = await ask(address, '/backups', {});
      const archive = file(`data/backups/${body.name}`);
      writeFileSync(archive, readFileSync(archive).subarray(0, 500));
      const answer = await ask(address, `/backups/${body.name}/restore`, {});
      expect(answer.status).toBe(422);
      expect(answer.body.message).toMatch(/cut short or damaged/);
      expect((await ask(address, '/backups/none/restore', {})).status).toBe(404);
      expect((await ask(address, '/documents?search=brook')).body.total).toBe(1);
    });
    expect(readdirSync(file('data')).filter((entry) => /part|before/.test(entry))).toEqual([]);
  });
});

describe('a file is refused, and the record stays as it is, when it', () => {
  const refused = async (name: string, bytes: Uint8Array, words: RegExp) => {
    await withServer(file('data'), (address) => addBuild(address, 'Brook'));
    const before = rowsOf(file('data'));
    writeFileSync(file(name), bytes);
    await expect(restoreBackup(file(name), file('data'), at)).rejects.toThrow(words);
    expect(rowsOf(file('data'))).toEqual(before);
    expect(readdirSync(file('data')).filter((entry) => /part|before/.test(entry))).toEqual([]);
  };
  const made = async () => {
    await withServer(file('data'), (address) => addBuild(address, 'Brook'));
    await backUp('good.zip');
    return new Uint8Array(readFileSync(file('good.zip')));
  };
  const manifest = (database: object, more: object = {}) =>
    strToU8(
      JSON.stringify({
        format: 'fairbend backup',
        version: 1,
        record: 'r',
        madeAt: '2026-03-01T09:00:00Z',
        writtenBy: 't',
        schema: '0001-record',
        documents: 0,
        database: { name: 'fairbend.sqlite', bytes: 10, sha256: '0'.repeat(64), ...database },
        ...more,
      }),
    );

  test('is cut short', async () => {
    const good = await made();
    await refused('half.zip', good.slice(0, good.length / 2), /cut short or damaged/);
  });
  test('has a byte changed', async () => {
    const bad = await made();
    bad[Math.floor(bad.length * 0.6)] ^= 0xff;
    await refused('bad.zip', bad, /not what its manifest says|cut short or damaged|larger than its manifest/);
  });
  test('is no archive', () =>
    refused('text.zip', strToU8('hello '.repeat(100)), /no backup made by Fairbend/));
  test('holds a path out of the folder', () =>
    refused('path.zip', zipSync({ '../../evil': strToU8('x') }), /no backup made by Fairbend/));
  test('unpacks to more than it says (a bomb)', () =>
    refused(
      'bomb.zip',
      zipSync({ 'manifest.json': manifest({ bytes: 10 }), 'fairbend.sqlite': new Uint8Array(50e6) }),
      /larger than its manifest says/,
    ));
  test('is from the future', () =>
    refused(
      'future.zip',
      zipSync({ 'manifest.json': manifest({}, { schema: '9999-wings' }), 'fairbend.sqlite': strToU8('x') }),
      /newer Fairbend/,
    ));
});
