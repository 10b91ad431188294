import { afterEach, beforeEach, describe, expect, test, vi } from 'vitest';
import { FakeServer, fakeStorage } from '../../../test/kit/fake-server.ts';
import { rows, valueAt } from '../../record/document.ts';
import type { Operation, Path } from '../../record/operation.ts';
import { createApi } from './api.ts';
import { DocumentStore } from './document-store.ts';
import { flushOutbox } from './flush-outbox.ts';
import { LiveFeed } from './live-feed.ts';
import { LocalStorageOutbox } from './outbox.ts';

const title: Path = ['about', '-', 'title'];
const note: Path = ['about', '-', 'note'];
const inch = (inches: number) => ({ si: inches * 0.0254, text: `${inches} in` });

/** A browser tab: `storage` is shared by the tabs of one browser. */
function openTab(server: FakeServer, device: string, storage = fakeStorage()) {
  let seed = 1;
  return DocumentStore.open('b1', {
    api: createApi(server.fetch),
    outbox: new LocalStorageOutbox(storage),
    feed: new LiveFeed(server.connect),
    device,
    fillRandom: (bytes) => bytes.map(() => (seed++ * 7) & 255),
    now: () => new Date('2026-03-01T09:00:00Z'),
  });
}

function foreign(clock: number, path: Path, value: string, old: string | null = null): Operation {
  const device = 'other-x';
  const at = '2026-03-01T09:00:00Z';
  return { id: `${device}.${clock}.0`, device, clock, gesture: `g${clock}`, path, old, value, at };
}

beforeEach(() => void vi.useFakeTimers());
afterEach(() => void vi.useRealTimers());

describe('writing', () => {
  test('a change stands at once and is saved when the server has it', async () => {
    const server = new FakeServer();
    const store = await openTab(server, 'd1-a');
    expect(store.write('rename', [{ path: title, value: 'Brook rod' }])).toEqual([]);
    expect(valueAt(store.getSnapshot().document, title)).toBe('Brook rod');
    expect(store.getSnapshot().save).toEqual({ kind: 'saving', pending: 1 });
    await store.settled();
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
    expect(server.stored.map((operation) => operation.value)).toEqual(['Brook rod']);
  });

  test('a value that does not fit is named and nothing of the gesture is written', async () => {
    const server = new FakeServer();
    const store = await openTab(server, 'd1-a');
    const findings = store.write('edit', [
      { path: title, value: 'kept out too' },
      { path: ['sections', 's1', 'length'], value: { si: 70, text: '70' } },
    ]);
    expect(findings).toHaveLength(1);
    expect(findings[0].path).toBe('sections/s1/length');
    expect(findings[0].message).toMatch(/Length of section.*70.*from 0 m to 10 m.*Check the unit/);
    expect(valueAt(store.getSnapshot().document, title)).toBeNull();
    expect(server.stored).toEqual([]);
  });

  test('the snapshot is the same object until something changes, and rows the same until theirs do', async () => {
    const store = await openTab(new FakeServer(), 'd1-a');
    store.write('add', [{ path: ['guides', 'g1', 'station'], value: inch(4) }]);
    const before = store.getSnapshot();
    const guides = rows(before.document, 'guides');
    expect(store.getSnapshot()).toBe(before);
    store.write('rename', [{ path: title, value: 'x' }]);
    expect(store.getSnapshot()).not.toBe(before);
    expect(rows(store.getSnapshot().document, 'guides')).toBe(guides);
  });
});

describe('what is said to be kept', () => {
  const away = async (add: () => Promise<void>) => {
    const server = new FakeServer();
    const outbox = Object.assign(new LocalStorageOutbox(fakeStorage()), { add });
    const store = await DocumentStore.open('b1', {
      api: createApi(server.fetch),
      outbox,
      device: 'd1-a',
      fillRandom: (bytes) => bytes.map(() => 1),
      now: () => new Date('2026-03-01T09:00:00Z'),
    });
    server.cut = true;
    store.write('rename', [{ path: title, value: 'Brook rod' }]);
    return { server, store };
  };

  test('stands in the browser’s own store by then', async () => {
    let keep: () => void = () => undefined;
    const { server, store } = await away(() => new Promise((resolve) => (keep = resolve)));
    await vi.advanceTimersByTimeAsync(400);
    expect(store.getSnapshot().save).toEqual({ kind: 'saving', pending: 1 });
    keep();
    await vi.advanceTimersByTimeAsync(0);
    expect(store.getSnapshot().save).toMatchObject({ kind: 'kept', pending: 1 });
    server.cut = false;
    await vi.advanceTimersByTimeAsync(1000);
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
  });

  test('is not said of what that store would not take', async () => {
    const { server, store } = await away(() => Promise.reject(new Error('full')));
    await vi.advanceTimersByTimeAsync(400);
    expect(store.getSnapshot().save).toMatchObject({ kind: 'kept', pending: 1, onlyOnPage: true });
    server.cut = false;
    await vi.advanceTimersByTimeAsync(1000);
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
  });
});

describe('a cut network', () => {
  test('changes made meanwhile are kept, say so, and go out in order when it is back', async () => {
    const server = new FakeServer();
    const store = await openTab(server, 'd1-a');
    server.cut = true;
    for (const value of ['one', 'two', 'three']) store.write('rename', [{ path: title, value }]);
    await vi.advanceTimersByTimeAsync(5000);
    expect(store.getSnapshot().save).toEqual({
      kind: 'kept',
      pending: 3,
      reason: 'The server cannot be reached',
    });
    server.cut = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
    expect(server.stored.map((operation) => operation.value)).toEqual(['one', 'two', 'three']);
  });

  test('an answer that was lost does not store the change twice', async () => {
    const server = new FakeServer();
    const store = await openTab(server, 'd1-a');
    server.loseAnswers = 1;
    store.write('rename', [{ path: title, value: 'once' }]);
    await vi.advanceTimersByTimeAsync(20_000);
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
    expect(server.stored).toHaveLength(1);
  });

  test('a tab killed before the server answered loses nothing', async () => {
    const server = new FakeServer();
    const storage = fakeStorage();
    const killed = await openTab(server, 'd1-a', storage);
    server.cut = true;
    killed.write('rename', [{ path: title, value: 'typed just before' }]);
    await vi.advanceTimersByTimeAsync(100);
    vi.clearAllTimers();
    server.cut = false;
    const next = await openTab(server, 'd1-b', storage);
    expect(valueAt(next.getSnapshot().document, title)).toBe('typed just before');
    await next.settled();
    expect(server.stored.map((operation) => operation.value)).toEqual(['typed just before']);
    expect(storage.length).toBe(0);
  });
});

test('what was meant for another record is not sent to this one', async () => {
  const server = new FakeServer();
  const storage = fakeStorage();
  const first = await openTab(server, 'd1-a', storage);
  server.cut = true;
  first.write('rename', [{ path: title, value: 'for the first record' }]);
  await vi.advanceTimersByTimeAsync(100);
  vi.clearAllTimers();
  const other = new FakeServer();
  other.record = 'r2';
  await (await openTab(other, 'd1-b', storage)).settled();
  expect(other.stored).toEqual([]);
  server.cut = false;
  await (await openTab(server, 'd1-c', storage)).settled();
  expect(server.stored).toHaveLength(1);
});

test('a document left before all was saved is saved all the same', async () => {
  const server = new FakeServer();
  const store = await openTab(server, 'd1-a');
  server.cut = true;
  store.write('rename', [{ path: title, value: 'and away' }]);
  store.close();
  server.cut = false;
  await vi.advanceTimersByTimeAsync(20_000);
  expect(server.stored.map((operation) => operation.value)).toEqual(['and away']);
});

test('what a killed tab left unsent goes out when the next page comes up, without opening the document', async () => {
  const server = new FakeServer();
  const storage = fakeStorage();
  const killed = await openTab(server, 'd1-a', storage);
  server.cut = true;
  for (const value of ['one', 'two']) killed.write('rename', [{ path: title, value }]);
  await vi.advanceTimersByTimeAsync(100);
  vi.clearAllTimers();
  server.cut = false;
  await flushOutbox(createApi(server.fetch), new LocalStorageOutbox(storage));
  expect(server.stored.map((operation) => operation.value)).toEqual(['one', 'two']);
  expect(storage.length).toBe(0);
});

describe('a refusal', () => {
  test('keeps back the gesture at fault alone, and says what is wrong', async () => {
    const server = new FakeServer();
    server.unknownField = 'note';
    const store = await openTab(server, 'd1-a');
    store.write('rename', [{ path: title, value: 'a' }]);
    store.write('note', [{ path: note, value: 'b' }]);
    store.write('rename', [{ path: title, value: 'c' }]);
    await store.settled();
    expect(store.getSnapshot().save).toEqual({
      kind: 'refused',
      pending: 1,
      findings: [{ path: 'about/-/note', message: 'not known here' }],
    });
    expect(server.stored.map((operation) => operation.value)).toEqual(['a', 'c']);
    store.dropRefused();
    expect(store.getSnapshot().save).toEqual({ kind: 'saved' });
    expect(valueAt(store.getSnapshot().document, note)).toBeNull();
    expect(valueAt(store.getSnapshot().document, title)).toBe('c');
  });
});

describe('two devices', () => {
  test('see each other', async () => {
    const server = new FakeServer();
    const bench = await openTab(server, 'd1-a');
    const office = await openTab(server, 'd2-a');
    bench.write('rename', [{ path: title, value: 'from the bench' }]);
    office.write('note', [{ path: note, value: 'from the office' }]);
    await Promise.all([bench.settled(), office.settled()]);
    expect(office.getSnapshot().document.cells).toEqual(bench.getSnapshot().document.cells);
    expect(valueAt(office.getSnapshot().document, title)).toBe('from the bench');
    expect(office.getSnapshot().conflicts).toEqual([]);
  });

  test('changing the same field apart: both are told which value stands', async () => {
    const server = new FakeServer();
    const bench = await openTab(server, 'd1-a');
    server.cut = true;
    bench.write('rename', [{ path: title, value: 'bench' }]);
    server.arrive([foreign(1, title, 'elsewhere')]);
    server.cut = false;
    await vi.advanceTimersByTimeAsync(20_000);
    expect(valueAt(bench.getSnapshot().document, title)).toBe('elsewhere');
    expect(bench.getSnapshot().conflicts).toMatchObject([
      { path: title, standing: { value: 'elsewhere' }, other: { value: 'bench' } },
    ]);
    expect(bench.history(title).map((operation) => operation.value)).toEqual(['bench', 'elsewhere']);
  });

  test('the other side is told the same, once, however often the field was changed meanwhile', async () => {
    const server = new FakeServer();
    const [bench, office] = [await openTab(server, 'd1-a'), await openTab(server, 'd2-a')];
    server.cut = true;
    bench.write('rename', [{ path: title, value: 'bench at first' }]);
    bench.write('rename', [{ path: title, value: 'bench' }]);
    office.write('rename', [{ path: title, value: 'office' }]);
    server.cut = false;
    await vi.advanceTimersByTimeAsync(20_000);
    await Promise.all([bench.settled(), office.settled()]);
    await vi.advanceTimersByTimeAsync(20_000);
    const told = [bench, office].map((store) => store.getSnapshot().conflicts);
    expect(told[0]).toMatchObject([
      { path: title, standing: { value: 'bench' }, other: { value: 'office' } },
    ]);
    expect(told[1]).toMatchObject([
      { path: title, standing: { value: 'bench' }, other: { value: 'office' } },
    ]);
  });

  test('a page that comes back with unsent changes is told what they met', async () => {
    const server = new FakeServer();
    const storage = fakeStorage();
    const bench = await openTab(server, 'd1-a', storage);
    server.cut = true;
    bench.write('rename', [{ path: title, value: 'bench' }]);
    await vi.advanceTimersByTimeAsync(100);
    bench.close();
    server.arrive([foreign(1, title, 'elsewhere')]);
    server.cut = false;
    const again = await openTab(server, 'd1-b', storage);
    expect(again.getSnapshot().conflicts).toMatchObject([
      { standing: { value: 'elsewhere' }, other: { value: 'bench' } },
    ]);
  });
});

describe('undo', () => {
  test('takes gestures back one by one, redo does them again, and a reload changes nothing of that', async () => {
    const server = new FakeServer();
    const storage = fakeStorage();
    let store = await openTab(server, 'd1-a', storage);
    store.write('set:about:title', [{ path: title, value: 'first' }]);
    const drag = store.gesture('moveGuide:7');
    for (const station of [4, 5, 6])
      store.write(drag, [{ path: ['guides', 'g1', 'station'], value: inch(station) }]);
    await store.settled();

    store = await openTab(server, 'd1-b', storage);
    expect(store.getSnapshot()).toMatchObject({ undo: drag.id, redo: null });
    expect(store.undo()).toEqual({ done: true, gesture: drag.id, held: [] });
    expect(rows(store.getSnapshot().document, 'guides')).toEqual([]);
    await store.settled();

    store = await openTab(server, 'd1-c', storage);
    expect(store.getSnapshot()).toMatchObject({
      undo: expect.stringMatching(/^set:about:title\.[a-z0-9]{8}$/),
      redo: drag.id,
    });
    store.redo();
    expect(rows(store.getSnapshot().document, 'guides')[0].fields.station).toEqual(inch(6));
    store.undo();
    store.undo();
    expect(store.undo().done).toBe(false);
    expect(valueAt(store.getSnapshot().document, title)).toBeNull();
  });

  test('leaves what another device has changed since, and says so', async () => {
    const server = new FakeServer();
    const store = await openTab(server, 'd1-a');
    store.write('edit', [
      { path: title, value: 'mine' },
      { path: note, value: 'mine too' },
    ]);
    await store.settled();
    server.arrive([foreign(9, title, 'theirs', 'mine')]);
    expect(store.undo()).toMatchObject({ done: true, held: [title] });
    expect(valueAt(store.getSnapshot().document, title)).toBe('theirs');
    expect(valueAt(store.getSnapshot().document, note)).toBeNull();
    expect(store.undo()).toEqual({ done: false, gesture: '', held: [] });
  });
});
