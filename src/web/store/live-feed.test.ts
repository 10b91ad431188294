import { afterEach, beforeEach, expect, test, vi } from 'vitest';
import { type EventStream, LiveFeed, type Watch } from './live-feed.ts';

class Stream implements EventStream {
  closed = false;
  private readonly listeners: [string, (event: MessageEvent<string>) => void][] = [];
  readonly address: string;
  constructor(address: string) {
    this.address = address;
  }
  addEventListener(type: string, listener: (event: MessageEvent<string>) => void): void {
    this.listeners.push([type, listener]);
  }
  close(): void {
    this.closed = true;
  }
  emit(type: string, data: unknown = null): void {
    const event = { data: JSON.stringify(data) } as MessageEvent<string>;
    for (const [wanted, listener] of this.listeners) if (wanted === type) listener(event);
  }
}

let streams: Stream[];
let feed: LiveFeed;
beforeEach(() => {
  vi.useFakeTimers();
  streams = [];
  feed = new LiveFeed((address) => {
    const stream = new Stream(address);
    streams.push(stream);
    return stream;
  }, 1000);
});
afterEach(() => void vi.useRealTimers());

const open = () => streams.filter((stream) => !stream.closed);

function watch(document: string, seq = 0): Watch & { seq: number; heard: number; answers: number } {
  return {
    document,
    seq,
    heard: 0,
    answers: 0,
    after() {
      return this.seq;
    },
    received(operations) {
      this.heard += operations.length;
    },
    connected() {
      this.answers += 1;
    },
  };
}

test('one connection serves all documents, each hears its own', () => {
  const [build, shop] = [watch('b1', 7), watch('shop', 2)];
  feed.watch(build);
  feed.watch(shop);
  expect(open().map((stream) => stream.address)).toEqual(['/api/events?after=b1:7&after=shop:2']);
  open()[0].emit('operations', { document: 'shop', operations: [{}, {}] });
  expect([build.heard, shop.heard]).toEqual([0, 2]);
});

test('a lost connection comes back after a while and takes up after the last operation', () => {
  const build = watch('b1', 7);
  feed.watch(build);
  open()[0].emit('error');
  expect(open()).toEqual([]);
  build.seq = 9;
  vi.advanceTimersByTime(1000);
  expect(open().map((stream) => stream.address)).toEqual(['/api/events?after=b1:9']);
  open()[0].emit('open');
  expect(build.answers).toBe(1);
});

test('a hidden page holds no connection, and catches up when it is seen again', () => {
  const build = watch('b1', 7);
  const stop = feed.watch(build);
  feed.pause();
  expect(open()).toEqual([]);
  vi.advanceTimersByTime(60_000);
  expect(open()).toEqual([]);
  build.seq = 8;
  feed.resume();
  expect(open().map((stream) => stream.address)).toEqual(['/api/events?after=b1:8']);
  stop();
  expect(open()).toEqual([]);
});

test('a feed that opens with another record, or one put back since, says so once', () => {
  const opened: ((event: MessageEvent<string>) => void)[] = [];
  let replaced = 0;
  const connect = () => ({
    addEventListener: (type: string, listener: (event: MessageEvent<string>) => void) => {
      if (type === 'record') opened.push(listener);
    },
    close: () => undefined,
  });
  const feed = new LiveFeed(connect, 1, () => {
    replaced += 1;
  });
  feed.watch({ document: 'b1', after: () => 0, received: () => undefined, connected: () => undefined });
  const hear = (data: object) => opened.at(-1)!({ data: JSON.stringify(data) } as MessageEvent<string>);
  hear({ record: 'r1', restoredAt: '' });
  feed.reconnect();
  hear({ record: 'r1', restoredAt: '' });
  expect(replaced).toBe(0);
  feed.reconnect();
  hear({ record: 'r1', restoredAt: '2026-03-01T09:00:00Z' });
  expect(replaced).toBe(1);
});
