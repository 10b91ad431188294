import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, beforeEach, expect, test } from 'vitest';
import { valueAt } from '../src/record/document.ts';
import type { Operation, Path } from '../src/record/operation.ts';
import { pastGestures } from '../src/record/past.ts';
import { type RunningServer, serve } from '../src/server/serve.ts';
import { createApi } from '../src/web/store/api.ts';
import { DocumentStore } from '../src/web/store/document-store.ts';
import { LocalStorageOutbox } from '../src/web/store/outbox.ts';
import { fakeStorage } from './kit/fake-server.ts';
import { operation } from './kit/one-operation.ts';

const title: Path = ['about', '-', 'title'];
const note: Path = ['about', '-', 'note'];
const count = 6000;

let folder = '';
let server: RunningServer;
let api: ReturnType<typeof createApi>;
let id = '';
let store: DocumentStore;

/** An earlier quarrel about the note, nobody has chosen; then the title again and again, by this device. */
const quarrel: Operation[] = ['d1-a', 'd2-a'].map((device, index) => ({
  ...operation(10, `of ${device}`, ['about', '-', 'note']),
  id: `${device}.10.0`,
  device,
  gesture: `q${index}`,
}));
const long = Array.from({ length: count - 2 }, (_, index) => operation(index + 20, `title ${index + 3}`));

beforeAll(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-long-'));
  server = await serve({ dataFolder: folder, port: 0 });
  api = createApi(fetch, server.address);
  id = (await api.createBuild([])).id;
  const log = [...quarrel, ...long];
  for (let start = 0; start < log.length; start += 500) await api.append(id, log.slice(start, start + 500));
});
afterAll(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});
beforeEach(async () => {
  store = await DocumentStore.open(id, {
    api,
    outbox: new LocalStorageOutbox(fakeStorage()),
    device: 'd1-b',
    fillRandom: (bytes) => bytes.map((_, index) => index),
    now: () => new Date('2026-03-02T09:00:00Z'),
  });
  return () => store.close();
});

/** One more than was appended: the server noted when the build was made. */
const lastSeq = count + 1;

test('a page holds the end of a long history, and stands as the whole of it', async () => {
  const { operations } = store.past.before;
  expect(operations.length).toBeLessThan(10);
  expect(store.past.unread).toBe(lastSeq - 1000);
  expect(store.operations()).toHaveLength(1000);
  const { document, conflicts, undo } = store.getSnapshot();
  expect(valueAt(document, title)).toBe(`title ${count}`);
  expect(document.cells).toEqual(new Map((await api.document(id)).cells));
  // Two texts of six thousand changes ago still wait for somebody to choose.
  expect(conflicts.map(({ standing, other }) => [standing.value, other.value])).toEqual([
    ['of d2-a', 'of d1-a'],
  ]);
  expect(undo).toBe(`g.${count + 17}`);
});

test('what lies before is read part by part, whole in the end, and undo reaches into it', async () => {
  const seen = [store.past.unread];
  while (store.past.unread > 0) {
    await store.past.readEarlier();
    seen.push(store.past.unread);
  }
  expect(seen).toEqual([5001, 3001, 1001, 0]);
  const past = pastGestures(store.operations(), store.past.unread);
  expect(past).toHaveLength(lastSeq);
  expect(past.at(-1)?.upTo).toBe(lastSeq);
  expect(new Set(store.operations().map((one) => one.id)).size).toBe(lastSeq);
  expect(store.history(note)).toHaveLength(2);
});

test('a state of long ago is asked of the server, once, and says when it is there', async () => {
  expect(store.past.stateAfter(4)).toBeUndefined();
  await new Promise<void>((resolve) => {
    store.subscribe(resolve);
  });
  expect(store.getSnapshot().pastStates).toBe(1);
  expect(valueAt(store.past.stateAfter(4)!, title)).toBe('title 3');
  // What this page has read it tells itself.
  expect(valueAt(store.past.stateAfter(lastSeq - 1)!, title)).toBe(`title ${count - 1}`);
});

test('changes are written, undone and saved on it as on any other', async () => {
  store.write('rename', [{ path: title, value: 'mine' }]);
  await store.settled();
  expect((await api.operationsAfter(id, lastSeq)).operations.map(({ value }) => value)).toEqual(['mine']);
  expect(store.undo().done).toBe(true);
  expect(valueAt(store.getSnapshot().document, title)).toBe(`title ${count}`);
  await store.settled();
  expect((await api.document(id)).cells).toEqual([...store.getSnapshot().document.cells]);
});
