import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import type { DocumentList, FeedOpening } from '../../record/api.ts';
import type { ShopImportAnswer, ShopImportStanding } from '../../record/record-api.ts';
import { type RunningServer, serve } from '../serve.ts';
import { openSqlite } from '../sqlite.ts';

let folder = '';
let shop: RunningServer;
let empty: RunningServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-take-in-'));
  shop = await serve({ dataFolder: join(folder, 'shop'), port: 0 });
  empty = await serve({ dataFolder: join(folder, 'empty'), port: 0 });
});
afterEach(async () => {
  await Promise.all([shop.close(), empty.close()]);
  rmSync(folder, { recursive: true, force: true });
});

const addBuild = (server: RunningServer, title: string) =>
  fetch(`${server.address}/api/documents`, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify({ kind: 'build', changes: [{ path: ['about', '-', 'title'], value: title }] }),
  });
const get = async <T>(server: RunningServer, path: string) =>
  (await (await fetch(`${server.address}/api/${path}`)).json()) as T;
const standing = () => get<ShopImportStanding>(empty, 'shop/import');
const titles = async (server: RunningServer) =>
  (await get<DocumentList>(server, 'documents')).documents.map(({ title }) => title).sort();
const archiveOf = async () =>
  new Uint8Array(await (await fetch(`${shop.address}/api/shop/files`)).arrayBuffer());
const leftOver = () =>
  readdirSync(join(folder, 'empty')).filter((name) => /part|before|fairbend-import/.test(name));

async function takeIn(bytes: Uint8Array, headers: Record<string, string> = {}) {
  const answer = await fetch(`${empty.address}/api/shop/import`, {
    method: 'POST',
    headers: { 'content-type': 'application/octet-stream', ...headers },
    body: new Uint8Array(bytes),
  });
  return { status: answer.status, body: (await answer.json()) as ShopImportAnswer & { message: string } };
}

describe('a whole shop sent to a running server', () => {
  test('stands in the place of a record with nothing of one’s own, which is kept; open pages are told', async () => {
    for (const title of ['Brook', 'Lake']) await addBuild(shop, title);
    const before = await opening();
    expect(await standing()).toEqual({ stage: 'none', done: 0, total: 0, refusal: null });
    const { status, body } = await takeIn(await archiveOf());
    expect(status, body.message).toBe(201);
    expect(body).toMatchObject({ documents: 3, attachments: 0 });
    expect(await titles(empty)).toEqual(await titles(shop));
    const after = await opening();
    expect(after.record).not.toBe(before.record);
    expect(Date.parse(after.restoredAt)).toBeGreaterThan(0);
    const { database } = openSqlite(body.keptAs!);
    expect(database.prepare('select id from documents').all([])).toEqual([{ id: 'demo' }]);
    database.close();
    expect(leftOver()).toEqual([expect.stringMatching(/^fairbend-before-import-.*\.sqlite$/)]);
    // It goes on from there, also after a restart.
    await addBuild(empty, 'River');
    await empty.close();
    empty = await serve({ dataFolder: join(folder, 'empty'), port: 0 });
    expect(await titles(empty)).toEqual([...(await titles(shop)), 'River'].sort());
  });

  test('what came back goes out as the same files again', async () => {
    await addBuild(shop, 'שלום 🎣 <script>');
    await takeIn(await archiveOf());
    const documentsOf = (server: RunningServer) => {
      const { database } = openSqlite(join(server.dataFolder, 'fairbend.sqlite'));
      const rows = ['documents', 'operations'].map((table) =>
        database.prepare(`select * from ${table} order by 1, 2`).all([]),
      );
      database.close();
      return rows;
    };
    expect(documentsOf(empty)).toEqual(documentsOf(shop));
  });

  test('is refused with what to do where a build stands, one put away too; nothing is changed', async () => {
    const { id } = (await (await addBuild(empty, 'Own')).json()) as { id: string };
    await fetch(`${empty.address}/api/documents/${id}/put-away`, {
      method: 'POST',
      headers: { 'content-type': 'application/json' },
      body: '{}',
    });
    const refusal = /one build or repair already.*archived.*--data FOLDER.*from the shelf/;
    expect((await standing()).refusal).toMatch(refusal);
    const { status, body } = await takeIn(await archiveOf());
    expect([status, body.message]).toEqual([409, expect.stringMatching(refusal)]);
    expect(leftOver()).toEqual([]);
    expect((await get<DocumentList>(empty, 'documents?gone=true')).total).toBe(1);
  });

  test.each<[string, (whole: Uint8Array) => Uint8Array, RegExp]>([
    ['half an archive', (whole) => whole.subarray(0, whole.length / 2), /cut short|damaged/],
    ['nothing at all', () => new Uint8Array(0), /no archive of a shop/],
    ['a picture', () => readFileSync('docs/figures/layout-sheet.png'), /no archive of a shop|cut short/],
  ])('that is %s is refused, and the server goes on', async (_, spoil, words) => {
    await addBuild(shop, 'Brook');
    const { status, body } = await takeIn(spoil(await archiveOf()));
    expect([status, body.message]).toEqual([422, expect.stringMatching(words)]);
    expect(leftOver()).toEqual([]);
    expect(await standing()).toMatchObject({ stage: 'none', refusal: null });
    expect((await takeIn(await archiveOf())).status).toBe(201);
  });

  test('by another device is forbidden', async () => {
    const { status } = await takeIn(await archiveOf(), { 'x-forwarded-for': '192.0.2.7' });
    expect(status).toBe(401);
    expect(leftOver()).toEqual([]);
  });

  test('tells how far it is, and is one at a time', async () => {
    await addBuild(shop, 'Brook');
    const whole = await archiveOf();
    let go: () => void = () => undefined;
    const half = new Promise<void>((resolve) => {
      go = resolve;
    });
    const body = new ReadableStream<Uint8Array>({
      async start(controller) {
        controller.enqueue(whole.slice(0, 1000));
        await half;
        controller.enqueue(whole.slice(1000));
        controller.close();
      },
    });
    const slow = fetch(`${empty.address}/api/shop/import`, {
      method: 'POST',
      headers: { 'content-type': 'application/octet-stream' },
      body,
      duplex: 'half',
    } as RequestInit);
    await expect.poll(standing).toMatchObject({ stage: 'receiving', done: 1000 });
    expect(await takeIn(whole)).toMatchObject({
      status: 409,
      body: { message: expect.stringMatching(/being taken in/) },
    });
    go();
    expect((await slow).status).toBe(201);
  });
});

/** What a page's feed of this record opens with. */
async function opening(): Promise<FeedOpening> {
  const response = await fetch(`${empty.address}/api/events?after=demo:0`);
  let text = '';
  for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
    text += chunk;
    const [, data] = /^event: record\ndata: (.*)$/m.exec(text) ?? [];
    if (data) return JSON.parse(data) as FeedOpening;
  }
  throw new Error('The feed said nothing');
}
