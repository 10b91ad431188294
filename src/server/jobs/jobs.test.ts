import { mkdtempSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { ask, learn, lookUntil, nameSeries } from '../../../test/kit/running-jobs.ts';
import { compileServer, startServer } from '../../../test/kit/server-process.ts';
import { type TestApp, testApp } from '../../../test/kit/test-app.ts';
import { learnSeries } from '../../engine/series/learn-series.ts';
import { seriesMember } from '../../engine/series/member.ts';
import { benchFit } from '../../engine/stiffness/from-bench.ts';
import { readBuildFile } from '../../record/file-read.ts';
import { readBuild } from '../../record/read-build.ts';
import type { JobStatus } from '../../record/record-api.ts';
import { JobStore } from './job-store.ts';
import { workStep } from './job-work.ts';
import { mostWaiting } from './jobs.ts';
import { LocalJobs } from './local-jobs.ts';
import type { StepWorker } from './step-worker.ts';

const shelf = 'sample shelf';
let bench: TestApp;
let builds: string[] = [];
let store: JobStore;
const opened: LocalJobs[] = [];
beforeEach(async () => {
  bench = await testApp();
  store = new JobStore(bench.db, () => bench.keeper.timestamp());
  builds = [];
  for (const title of ['a', 'b', 'c']) {
    const changes = [{ path: ['about', '-', 'title'] as const, value: title }];
    builds.push((await bench.keeper.create({ kind: 'build', changes })).id);
  }
});
afterEach(async () => {
  for (const jobs of opened.splice(0)) await jobs.close();
  await bench.close();
});

/** A worker whose steps end when the test says so. */
function heldWorker() {
  const begun: { answer(value: unknown): void; fail(error: Error): void }[] = [];
  let heard: () => void = () => undefined;
  let ends = 0;
  const worker: StepWorker = {
    work: () =>
      new Promise((answer, fail) => {
        begun.push({ answer, fail });
        heard();
      }),
    async end() {
      ends += 1;
      begun.at(-1)?.fail(new Error('The worker ended'));
    },
  };
  const step = async (number: number) => {
    while (begun.length <= number)
      await new Promise<void>((resolve) => {
        heard = resolve;
      });
    return begun[number];
  };
  return { worker, step, begun, ends: () => ends };
}

function open(worker: StepWorker): LocalJobs {
  const jobs = new LocalJobs(store, bench.keeper, () => worker);
  opened.push(jobs);
  return jobs;
}

/** Looks until it is so; the test's own time limit is the only one. */
async function until(jobs: LocalJobs, id: string, wanted: (job: JobStatus) => boolean): Promise<JobStatus> {
  for (;;) {
    const job = (await jobs.status(id))!;
    if (wanted(job)) return job;
    await new Promise((resolve) => setImmediate(resolve));
  }
}

describe('a job', () => {
  test('goes step by step, tells how far it is, and keeps its answers', async () => {
    const { worker, step } = heldWorker();
    const jobs = open(worker);
    const { id, state } = await jobs.start(shelf, { builds });
    expect(state).toBe('waiting');
    (await step(0)).answer('first');
    await step(1);
    expect(await jobs.status(id)).toMatchObject({ state: 'running', done: 1, total: 3, message: 'b' });
    (await step(1)).answer('second');
    (await step(2)).answer('third');
    const done = await until(jobs, id, (job) => job.state === 'done');
    expect(done).toMatchObject({ done: 3, total: 3, attempts: 1, result: ['first', 'second', 'third'] });
  });

  test('called off is ended in the middle of a step, and the next one begins', async () => {
    const { worker, step, ends } = heldWorker();
    const jobs = open(worker);
    const { id } = await jobs.start(shelf, { builds });
    const next = await jobs.start(shelf, { builds: [builds[2]] });
    await step(0);
    expect(await jobs.cancel(id)).toMatchObject({ state: 'cancelled' });
    (await step(1)).answer('of the next');
    await until(jobs, next.id, (job) => job.state === 'done');
    expect(ends()).toBeGreaterThan(0);
    expect(await jobs.status(id)).toMatchObject({ state: 'cancelled' });
  });

  test('that fails says why, and the next one begins', async () => {
    const { worker, step } = heldWorker();
    const jobs = open(worker);
    const { id } = await jobs.start(shelf, { builds });
    const next = await jobs.start(shelf, { builds: [builds[0]] });
    (await step(0)).fail(new Error('no equilibrium was found'));
    (await step(1)).answer('well');
    await until(jobs, next.id, (job) => job.state === 'done');
    expect(await jobs.status(id)).toMatchObject({ state: 'failed', message: 'no equilibrium was found' });
  });

  test('under way when the server ends is laid down and taken up by the next', async () => {
    const first = heldWorker();
    const jobs = open(first.worker);
    const { id } = await jobs.start(shelf, { builds: [builds[0]] });
    await first.step(0);
    await jobs.close();
    expect(await store.find(id)).toMatchObject({ state: 'waiting', attempts: 0 });
    const second = heldWorker();
    const later = open(second.worker);
    await later.takeUp();
    (await second.step(0)).answer('after all');
    expect(await until(later, id, (job) => job.state === 'done')).toMatchObject({ result: ['after all'] });
  });

  test('that ended three workers is not begun again', async () => {
    const { id } = await store.add(shelf, { builds });
    for (let attempt = 0; attempt < 3; attempt++) {
      await store.begin(id);
      await store.layDown(id, { counted: true });
    }
    const jobs = open(heldWorker().worker);
    await jobs.takeUp();
    const failed = await until(jobs, id, (job) => job.state === 'failed');
    expect(failed.message).toMatch(/ended its worker 3 times/);
  });

  test('of a build put away for good meanwhile goes on without it', async () => {
    const { worker, step } = heldWorker();
    const jobs = open(worker);
    const { id } = await jobs.start(shelf, { builds: ['none', builds[0]] });
    (await step(0)).answer('one');
    expect(await until(jobs, id, (job) => job.state === 'done')).toMatchObject({ result: ['one'], total: 2 });
  });
});

describe('the routes', () => {
  const start = (body: unknown) => bench.ask('POST', '/api/jobs', body);

  test('begin, show and call off', async () => {
    const answer = await start({ kind: shelf });
    expect(answer.status).toBe(202);
    const { id } = (await answer.json()) as JobStatus;
    expect((await bench.ask('POST', `/api/jobs/${id}/cancel`, {})).status).toBe(200);
    expect(await (await bench.ask('GET', '/api/jobs')).json()).toMatchObject({ jobs: [{ id, kind: shelf }] });
    expect((await bench.ask('GET', '/api/jobs/none')).status).toBe(404);
    expect((await bench.ask('POST', '/api/jobs/none/cancel', {})).status).toBe(404);
  });

  test.each([
    [{ kind: 'fly to the moon' }, 'kind', /no job "fly to the moon".*sample shelf/],
    [{ kind: '__proto__' }, 'kind', /There is no job/],
    [{ kind: shelf, input: { builds: 7 } }, 'input/builds', /./],
    [{ kind: 'learn series', input: {} }, 'input/series', /./],
  ])('%j is refused by name', async (body, path, message) => {
    const answer = await start(body);
    expect(answer.status).toBe(422);
    const { findings } = (await answer.json()) as { findings: { path: string; message: string }[] };
    expect(findings).toMatchObject([{ path, message: expect.stringMatching(message) }]);
  });

  test('let only so many wait', async () => {
    for (let count = 0; count < mostWaiting; count++) await store.add(shelf, {});
    expect((await start({ kind: shelf })).status).toBe(409);
  });
});

test('what a series says is what the engine says of the same blanks', () => {
  const read = readBuildFile(readFileSync('examples/demo-build.json', 'utf8'), '2026-03-01T09:00:00Z');
  if (read.status === 'refused') throw new Error('the demo is refused');
  const cells = [...read.build.state.cells];
  const member = workStep('learn series', { build: 'demo', title: 'Demo', cells });
  const learnt = workStep('learn series', { members: [member, null] });
  const { bench: demo } = readBuild(read.build.state);
  const same = seriesMember('demo', 'Demo', benchFit(demo!).request)!;
  expect(learnt).toEqual(learnSeries([same]));
  expect(() => workStep('learn series', { members: [null] })).toThrow(/No blank .* has been measured/);
});

test.skipIf(process.env.TEST_DATABASE_URL)(
  'the job of a killed server is done by the next one, in a thread',
  async () => {
    compileServer();
    const folder = mkdtempSync(join(tmpdir(), 'fairbend-jobs-'));
    let server = await startServer(folder);
    await nameSeries(server.address);
    const { id } = await ask(server.address, '/api/jobs', learn);
    await lookUntil(server.address, id, ({ state }) => state === 'running');
    await server.end('SIGKILL');
    server = await startServer(folder);
    const done = await lookUntil(server.address, id, ({ state }) => state === 'done');
    expect(done).toMatchObject({ attempts: 2, result: { blanks: 1 } });
    await server.end('SIGTERM');
    rmSync(folder, { recursive: true, force: true });
  },
);
