import type { Hono } from 'hono';
import type { Kysely } from 'kysely';
import { createApp } from '../../src/server/app.ts';
import { ChangeFeed } from '../../src/server/change-feed.ts';
import { openDatabase } from '../../src/server/database.ts';
import { JobStore } from '../../src/server/jobs/job-store.ts';
import { LocalJobs } from '../../src/server/jobs/local-jobs.ts';
import type { StepWorker } from '../../src/server/jobs/step-worker.ts';
import { Keeper } from '../../src/server/keeper.ts';
import type { Tables } from '../../src/server/tables.ts';
import { scratchDatabase } from './scratch-database.ts';

export interface TestApp {
  app: Hono;
  keeper: Keeper;
  db: Kysely<Tables>;
  /** A request as the page makes it; `body` is sent as JSON unless it is text or bytes. */
  ask(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<Response>;
  /** Rows of every table. */
  counts(): Promise<Record<string, number>>;
  close(): Promise<void>;
}

/**
 * The whole server in this process, its record in memory; with TEST_DATABASE_URL=postgres://… in a database of
 * its own on that server.
 */
export async function testApp(demoFile = '/nonexistent/demo.json'): Promise<TestApp> {
  const scratch = process.env.TEST_DATABASE_URL
    ? await scratchDatabase(process.env.TEST_DATABASE_URL)
    : undefined;
  const { db, repository } = await openDatabase(scratch?.address ?? ':memory:');
  let seconds = 0;
  const keeper = new Keeper(
    repository,
    new ChangeFeed(),
    () => new Date(Date.UTC(2026, 2, 1, 9, 0, seconds++)),
  );
  const worker = idleWorker();
  const jobs = new LocalJobs(new JobStore(db, () => keeper.timestamp()), keeper, () => worker);
  const app = createApp({
    keeper,
    jobs,
    version: '0.0.0',
    demoFile,
    info: () => ({
      app: 'fairbend',
      record: '',
      version: '0.0.0',
      mayEnd: false,
      dataFolder: '',
      database: '',
      demo: null,
    }),
    allowedHost: (host) => host === 'localhost',
    closing: new AbortController().signal,
  });
  return {
    app,
    keeper,
    db,
    ask: async (method, path, body, headers = {}) =>
      app.request(`http://localhost${path}`, {
        method,
        headers: body === undefined ? headers : { 'content-type': 'application/json', ...headers },
        body:
          typeof body === 'string' || body instanceof Uint8Array ? (body as BodyInit) : JSON.stringify(body),
      }),
    async counts() {
      const counts: Record<string, number> = {};
      for (const table of ['documents', 'operations', 'attachments', 'revisions', 'jobs'] as const) {
        const row = await db
          .selectFrom(table)
          .select((e) => e.fn.countAll<number>().as('n'))
          .executeTakeFirstOrThrow();
        counts[table] = Number(row.n);
      }
      return counts;
    },
    async close() {
      await jobs.close();
      await keeper.repository.close();
      await scratch?.drop();
    },
  };
}

/** Never done with its step; what a job makes of a worker is tested elsewhere. */
function idleWorker(): StepWorker {
  let stop: (error: Error) => void = () => undefined;
  return {
    work: () =>
      new Promise((_, reject) => {
        stop = reject;
      }),
    end: async () => stop(new Error('The worker ended')),
  };
}
