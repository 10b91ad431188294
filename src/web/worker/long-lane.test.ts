import { describe, expect, it } from 'vitest';
import { LongLane, type WorkerLike } from './long-lane.ts';
import type { FromWorker, LongTask, ToWorker } from './messages.ts';

interface FakeWorker extends WorkerLike {
  posted: ToWorker[];
  ended: boolean;
  say(message: FromWorker): void;
}

function setUp() {
  const workers: FakeWorker[] = [];
  const lane = new LongLane(() => {
    const worker: FakeWorker = {
      posted: [],
      ended: false,
      postMessage: (message) => worker.posted.push(message),
      terminate: () => {
        worker.ended = true;
      },
      onmessage: null,
      onerror: null,
      say: (data) => worker.onmessage?.({ data } as MessageEvent<FromWorker>),
    };
    workers.push(worker);
    return worker;
  });
  return { lane, workers };
}
const task = (name: string) => ({ does: 'fit', request: { name } }) as unknown as LongTask;
const answer = (text: string) => ({ text }) as never;

describe('long work', () => {
  it('is done one piece after the other, in order', async () => {
    const { lane, workers } = setUp();
    const first = lane.run(task('a'));
    const second = lane.run(task('b'));
    expect(workers[0].posted).toHaveLength(1);
    workers[0].say({ id: 1, says: 'done', answer: answer('a') });
    workers[0].say({ id: 2, says: 'done', answer: answer('b') });
    expect(await first).toEqual({ text: 'a' });
    expect(await second).toEqual({ text: 'b' });
    expect(workers).toHaveLength(1);
  });
  it('stops a piece under way by ending its worker, and goes on in a new one', async () => {
    const { lane, workers } = setUp();
    const stop = new AbortController();
    const first = lane.run(task('a'), { signal: stop.signal });
    const second = lane.run(task('b'));
    stop.abort();
    await expect(first).rejects.toThrow('newer');
    expect(workers[0].ended).toBe(true);
    workers[1].say({ id: workers[1].posted[0].id, says: 'done', answer: answer('b') });
    expect(await second).toEqual({ text: 'b' });
  });
  it('drops a waiting piece without disturbing the one under way', async () => {
    const { lane, workers } = setUp();
    const stop = new AbortController();
    const first = lane.run(task('a'));
    const second = lane.run(task('b'), { signal: stop.signal });
    stop.abort();
    await expect(second).rejects.toThrow('newer');
    expect(workers[0].ended).toBe(false);
    workers[0].say({ id: 1, says: 'done', answer: answer('a') });
    expect(await first).toEqual({ text: 'a' });
  });
  it('passes on progress, and a failure with its reason', async () => {
    const { lane, workers } = setUp();
    const steps: unknown[] = [];
    const run = lane.run(task('a'), { progress: (step) => steps.push(step) });
    workers[0].say({ id: 1, says: 'progress', progress: 0.5 as never });
    workers[0].say({ id: 1, says: 'failed', reason: 'no such place' });
    await expect(run).rejects.toThrow('no such place');
    expect(steps).toEqual([0.5]);
  });
  it('fails the piece whose worker broke, and does the next in a new one', async () => {
    const { lane, workers } = setUp();
    const first = lane.run(task('a'));
    const second = lane.run(task('b'));
    workers[0].onerror?.({ message: 'cannot be loaded' } as ErrorEvent);
    await expect(first).rejects.toThrow('cannot be loaded');
    workers[1].say({ id: workers[1].posted[0].id, says: 'done', answer: answer('b') });
    expect(await second).toEqual({ text: 'b' });
  });
});
