import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, expect, test } from 'vitest';
import { rows, valueAt } from '../src/record/document.ts';
import type { Path } from '../src/record/operation.ts';
import { type RunningServer, serve } from '../src/server/serve.ts';
import { createApi } from '../src/web/store/api.ts';
import { DocumentStore } from '../src/web/store/document-store.ts';
import { LiveFeed } from '../src/web/store/live-feed.ts';
import { LocalStorageOutbox } from '../src/web/store/outbox.ts';
import type { StoreSnapshot } from '../src/web/store/store-snapshot.ts';
import { eventStream } from './kit/event-stream.ts';
import { fakeStorage } from './kit/fake-server.ts';
import { seededRandom } from './kit/server-process.ts';

const title: Path = ['about', '-', 'title'];
const note: Path = ['about', '-', 'note'];

let folder = '';
let server: RunningServer;
let port = 0;
const stores: DocumentStore[] = [];

beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-two-'));
  server = await serve({ dataFolder: folder, port: 0 });
  port = Number(new URL(server.address).port);
});
afterEach(async () => {
  for (const store of stores.splice(0)) store.close();
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

function openBench(id: string, device: string): Promise<DocumentStore> {
  const random = seededRandom(device.charCodeAt(0));
  const store = DocumentStore.open(id, {
    api: createApi(fetch, server.address),
    outbox: new LocalStorageOutbox(fakeStorage()),
    feed: new LiveFeed(eventStream(server.address), 20),
    device: `${device}-s`,
    fillRandom: (bytes) => bytes.map(() => Math.floor(random() * 256)),
    now: () => new Date(),
    retryFirstMs: 10,
  });
  void store.then((opened) => stores.push(opened));
  return store;
}

/** Resolves when the store shows what is wanted; the test's own time limit is the only one. */
function until(store: DocumentStore, wanted: (snapshot: StoreSnapshot) => boolean): Promise<void> {
  return new Promise((resolve) => {
    const look = () => wanted(store.getSnapshot()) && resolve();
    store.subscribe(look);
    look();
  });
}

const newBuild = async () => (await createApi(fetch, server.address).createBuild()).id;

test('two devices on one build see each other, and edits of different fields both stand', async () => {
  const id = await newBuild();
  const [bench, office] = [await openBench(id, 'a'), await openBench(id, 'b')];
  bench.write('rename', [{ path: title, value: 'from the bench' }]);
  office.write('note', [{ path: note, value: 'from the office' }]);
  await until(office, ({ document }) => valueAt(document, title) === 'from the bench');
  await until(bench, ({ document }) => valueAt(document, note) === 'from the office');
  expect(bench.getSnapshot().document.cells).toEqual(office.getSnapshot().document.cells);
});

test('a device that lost the server goes on, says so, and merges; of one field both values are kept until one is chosen', async () => {
  const id = await newBuild();
  const [bench, office] = [await openBench(id, 'a'), await openBench(id, 'b')];
  await server.close();
  bench.write('rename', [{ path: title, value: 'bench' }]);
  bench.write('note', [{ path: note, value: 'kept' }]);
  office.write('rename', [{ path: title, value: 'office' }]);
  await until(bench, ({ save }) => save.kind === 'kept' && save.pending === 2);
  await until(office, ({ save }) => save.kind === 'kept' && save.pending === 1);
  server = await serve({ dataFolder: folder, port });
  const merged = ({ save, document, conflicts }: StoreSnapshot) =>
    save.kind === 'saved' && valueAt(document, note) === 'kept' && conflicts.length === 1;
  await Promise.all([until(bench, merged), until(office, merged)]);
  expect(bench.getSnapshot().document.cells).toEqual(office.getSnapshot().document.cells);
  // Same clock: one of them stands meanwhile, on both sides the same, and both are kept until somebody chooses.
  const both = [{ standing: { value: 'office' }, other: { value: 'bench' } }];
  expect(bench.getSnapshot().conflicts).toMatchObject(both);
  expect(office.getSnapshot().conflicts).toMatchObject(both);
  expect(bench.history(title).map((operation) => operation.value)).toEqual(['bench', 'office']);
  const fresh = await openBench(id, 'c');
  expect(fresh.getSnapshot().conflicts).toMatchObject(both);
  fresh.choose(fresh.getSnapshot().conflicts[0], 'bench');
  const settled = ({ document, conflicts }: StoreSnapshot) =>
    conflicts.length === 0 && valueAt(document, title) === 'bench';
  await Promise.all([bench, office, fresh].map((store) => until(store, settled)));
});

test('what the server lost since (its log deleted, an older file in its place) is sent again by a page that has it', async () => {
  const id = await newBuild();
  await server.close();
  const file = join(folder, 'fairbend.sqlite');
  const before = readFileSync(file);
  server = await serve({ dataFolder: folder, port });
  const bench = await openBench(id, 'a');
  bench.write('rename', [{ path: title, value: 'long saved' }]);
  await bench.settled();
  await until(bench, () => bench.operations().length === 2);
  await server.close();
  for (const end of ['-wal', '-shm']) rmSync(file + end, { force: true });
  writeFileSync(file, before);
  server = await serve({ dataFolder: folder, port });
  expect(server.warnings.join()).toMatch(/saved is missing from the record/);
  const there = async () =>
    (await createApi(fetch, server.address).operationsAfter(id, 0)).operations.map(({ value }) => value);
  await expect.poll(there, { timeout: 20_000 }).toContain('long saved');
  // Somebody else may have written in the gap: the page has that as well, and nothing twice.
  const office = await openBench(id, 'b');
  office.write('note', [{ path: note, value: 'after it' }]);
  await until(bench, ({ document }) => valueAt(document, note) === 'after it');
  expect(bench.getSnapshot().document.cells).toEqual(office.getSnapshot().document.cells);
});

test('three devices writing and undoing at random end with one and the same document', async () => {
  const id = await newBuild();
  const benches = [await openBench(id, 'a'), await openBench(id, 'b'), await openBench(id, 'c')];
  const random = seededRandom(7);
  const pick = (count: number) => Math.floor(random() * count);
  for (let step = 0; step < 150; step++) {
    const bench = benches[pick(3)];
    const dice = pick(10);
    if (dice === 0) bench.undo();
    else if (dice === 1) bench.redo();
    else {
      const value = { si: step / 1000, text: `${step} mm` };
      bench.write('move', [{ path: ['guides', `g${pick(5)}`, 'station'], value }]);
    }
    if (dice > 6) await bench.settled();
  }
  await Promise.all(benches.map((bench) => bench.settled()));
  const { lastSeq } = (await createApi(fetch, server.address).listDocuments()).documents[0];
  const fresh = await openBench(id, 'd');
  const expected = fresh.getSnapshot().document;
  for (const bench of benches) {
    await until(
      bench,
      ({ document }) => document.cells.size === expected.cells.size && same(document, expected),
    );
    expect(rows(bench.getSnapshot().document, 'guides')).toEqual(rows(expected, 'guides'));
  }
  expect(lastSeq).toBeGreaterThan(100);
});

function same(a: StoreSnapshot['document'], b: StoreSnapshot['document']): boolean {
  return [...a.cells].every(([key, cell]) => b.cells.get(key)?.id === cell.id);
}
