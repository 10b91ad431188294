import type { Hono } from 'hono';
import { createApp } from '../../src/server/app.ts';
import { ChangeFeed } from '../../src/server/change-feed.ts';
import { openDatabase } from '../../src/server/database.ts';
import { Keeper } from '../../src/server/keeper.ts';
import { SqlRepository } from '../../src/server/sql-repository.ts';

export interface TestApp {
  app: Hono;
  keeper: Keeper;
  /** A request as the page makes it; `body` is sent as JSON unless it is text or bytes. */
  ask(method: string, path: string, body?: unknown, headers?: Record<string, string>): Promise<Response>;
  /** Rows of every table. */
  counts(): Promise<Record<string, number>>;
  close(): Promise<void>;
}

/** The whole server in this process, its record in memory or in the database given. */
export async function testApp(place = ':memory:', demoFile = '/nonexistent/demo.json'): Promise<TestApp> {
  const { db } = await openDatabase(place);
  let seconds = 0;
  const keeper = new Keeper(
    new SqlRepository(db),
    new ChangeFeed(),
    () => new Date(Date.UTC(2026, 2, 1, 9, 0, seconds++)),
  );
  const app = createApp({
    keeper,
    demoFile,
    info: () => ({ app: 'fairbend', version: '0.0.0', dataFolder: '', database: '', demo: null }),
    allowedHost: (host) => host === 'localhost',
    closing: new AbortController().signal,
  });
  return {
    app,
    keeper,
    ask: async (method, path, body, headers = {}) =>
      app.request(`http://localhost${path}`, {
        method,
        headers: body === undefined ? headers : { 'content-type': 'application/json', ...headers },
        body:
          typeof body === 'string' || body instanceof Uint8Array ? (body as BodyInit) : JSON.stringify(body),
      }),
    async counts() {
      const counts: Record<string, number> = {};
      for (const table of ['documents', 'operations', 'attachments', 'revisions'] as const) {
        const row = await db
          .selectFrom(table)
          .select((e) => e.fn.countAll<number>().as('n'))
          .executeTakeFirstOrThrow();
        counts[table] = Number(row.n);
      }
      return counts;
    },
    close: () => keeper.repository.close(),
  };
}
