import { describe, expect, it } from 'vitest';
import { type LiveAnswer, LiveLane } from './live-lane.ts';
import type { WorkerLike } from './long-lane.ts';
import type { FromWorker, LadderSheet, ReadTask, ToWorker } from './messages.ts';

function fakeWorker() {
  const posted: ToWorker[] = [];
  const worker: WorkerLike = {
    postMessage: (message) => posted.push(message),
    terminate: () => undefined,
    onmessage: null,
    onerror: null,
  };
  const say = (message: FromWorker) => worker.onmessage?.({ data: message } as MessageEvent<FromWorker>);
  const answer = (id: number) => say({ id, says: 'done', answer: { worst: id } as never });
  const tasks = () => posted.map(({ task }) => task as ReadTask);
  return { worker, posted, tasks, say, answer };
}
const sheet = { diameters: [] } as unknown as LadderSheet;
const otherSheet = { diameters: [] } as unknown as LadderSheet;

describe('reading live', () => {
  it('asks the newest question only, once the one under way is answered', () => {
    const fake = fakeWorker();
    const lane = new LiveLane(() => fake.worker);
    const heard: LiveAnswer[] = [];
    lane.listen('ours', { read: (answer) => heard.push(answer), failed: () => undefined });
    for (const place of [0.1, 0.2, 0.3, 0.4]) lane.ask('ours', sheet, [place]);
    expect(fake.tasks().map(({ fromTipM }) => fromTipM)).toEqual([[0.1]]);
    fake.answer(1);
    expect(fake.tasks().map(({ fromTipM }) => fromTipM)).toEqual([[0.1], [0.4]]);
    fake.answer(2);
    expect(heard.map(({ fromTipM }) => fromTipM)).toEqual([[0.1], [0.4]]);
  });
  it('sends a sheet only when it is another one', () => {
    const fake = fakeWorker();
    const lane = new LiveLane(() => fake.worker);
    lane.listen('ours', { read: () => undefined, failed: () => undefined });
    [sheet, sheet, otherSheet].forEach((one, i) => {
      lane.ask('ours', one, [0.1]);
      fake.answer(i + 1);
    });
    expect(fake.tasks().map((task) => task.sheet)).toEqual([sheet, undefined, otherSheet]);
  });
  it('keeps every thread its own place in the queue', () => {
    const fake = fakeWorker();
    const lane = new LiveLane(() => fake.worker);
    const heard: string[] = [];
    for (const name of ['ours', 'start'])
      lane.listen(name, { read: () => heard.push(name), failed: () => undefined });
    lane.ask('ours', sheet, [0.1]);
    lane.ask('start', sheet, [0.2]);
    lane.ask('ours', sheet, [0.3]);
    fake.answer(1);
    fake.answer(2);
    fake.answer(3);
    expect(heard).toEqual(['ours', 'ours', 'start']);
  });
  it('tells of a failure, and sends the sheet again with the next question', () => {
    const fake = fakeWorker();
    const lane = new LiveLane(() => fake.worker);
    const reasons: string[] = [];
    lane.listen('ours', { read: () => undefined, failed: (reason) => reasons.push(reason) });
    lane.ask('ours', sheet, [0.1]);
    fake.say({ id: 1, says: 'failed', reason: 'station 3 after 2' });
    lane.ask('ours', sheet, [0.1]);
    expect(reasons).toEqual(['station 3 after 2']);
    expect(fake.tasks()[1].sheet).toBe(sheet);
  });
  it('puts the question to a new worker when one breaks, and tells only when that breaks too', () => {
    const fakes: ReturnType<typeof fakeWorker>[] = [];
    const lane = new LiveLane(() => {
      fakes.push(fakeWorker());
      return fakes[fakes.length - 1].worker;
    });
    const [heard, reasons]: [LiveAnswer[], string[]] = [[], []];
    lane.listen('ours', { read: (answer) => heard.push(answer), failed: (reason) => reasons.push(reason) });
    const breaks = (fake: (typeof fakes)[number]) =>
      fake.worker.onerror?.({ message: 'cannot be loaded' } as ErrorEvent);
    lane.ask('ours', sheet, [0.1]);
    breaks(fakes[0]);
    expect(fakes[1].tasks()).toMatchObject([{ fromTipM: [0.1], sheet }]);
    expect(reasons).toEqual([]);
    fakes[1].answer(fakes[1].posted[0].id);
    expect(heard).toHaveLength(1);
    lane.ask('ours', sheet, [0.2]);
    breaks(fakes[1]);
    breaks(fakes[2]);
    expect(reasons).toEqual(['cannot be loaded']);
    lane.ask('ours', sheet, [0.3]);
    expect(fakes[3].tasks()).toMatchObject([{ fromTipM: [0.3], sheet }]);
  });
  it('does not answer who no longer listens', () => {
    const fake = fakeWorker();
    const lane = new LiveLane(() => fake.worker);
    const heard: unknown[] = [];
    const leave = lane.listen('ours', { read: (answer) => heard.push(answer), failed: () => undefined });
    lane.ask('ours', sheet, [0.1]);
    leave();
    fake.answer(1);
    expect(heard).toEqual([]);
  });
});
