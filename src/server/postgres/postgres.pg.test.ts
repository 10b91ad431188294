import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import pg from 'pg';
import { afterEach, beforeAll, beforeEach, describe, expect, test } from 'vitest';
import { ask, learn, lookUntil, nameSeries } from '../../../test/kit/running-jobs.ts';
import { type ScratchDatabase, scratchDatabase } from '../../../test/kit/scratch-database.ts';
import { compileServer, type ServerProcess, startServer } from '../../../test/kit/server-process.ts';
import type { DocumentSummary, FeedMessage } from '../../record/api.ts';
import type { JobStatus } from '../../record/record-api.ts';
import { serve } from '../serve.ts';

let folder = '';
let scratch: ScratchDatabase;
const processes: ServerProcess[] = [];
beforeAll(compileServer);
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-pg-'));
  scratch = await scratchDatabase();
});
afterEach(async () => {
  for (const { end } of processes.splice(0)) await end('SIGKILL');
  await scratch.drop();
  rmSync(folder, { recursive: true, force: true });
});

/** One more server process on the same database. */
async function oneMore(): Promise<ServerProcess> {
  const started = await startServer(join(folder, `p${processes.length}`), { databaseUrl: scratch.address });
  processes.push(started);
  return started;
}

async function send<T>(address: string, path: string, body?: unknown): Promise<T> {
  const headers = { 'content-type': 'application/json' };
  const init = body === undefined ? {} : { method: 'POST', headers, body: JSON.stringify(body) };
  const response = await fetch(address + path, init);
  if (!response.ok) throw new Error(await response.text());
  return (await response.json()) as T;
}

const newBuild = (address: string) => send<DocumentSummary>(address, '/api/documents', { kind: 'build' });

function write(address: string, build: string, device: string, clock: number) {
  const operation = {
    id: `${device}.${clock}.0`,
    device,
    clock,
    gesture: `g.${clock}`,
    path: ['sections', `s${clock}`, 'name'],
    old: null,
    value: `by ${device}`,
    at: '2026-03-01T09:00:00Z',
  };
  return send(address, `/api/documents/${build}/operations`, { operations: [operation] });
}

/** What a feed says, one message after the other. */
async function* feedOf(address: string, build: string, after: number): AsyncGenerator<FeedMessage> {
  const response = await fetch(`${address}/api/events?after=${build}:${after}`);
  let text = '';
  for await (const chunk of response.body!.pipeThrough(new TextDecoderStream())) {
    const events = (text + chunk).split('\n\n');
    text = events.pop()!;
    for (const event of events) {
      const [, data] = /^event: operations\ndata: (.*)$/m.exec(event) ?? [];
      if (data) yield JSON.parse(data) as FeedMessage;
    }
  }
}

function clocksOf(heard: IteratorResult<FeedMessage>): number[] {
  return heard.done ? [] : heard.value.operations.map(({ clock }) => clock);
}

describe('two server processes on one database', () => {
  test('tell each other what was written, long before either looks for itself', async () => {
    const [one, other] = [await oneMore(), await oneMore()];
    const { id, lastSeq } = await newBuild(one.address);
    const feed = feedOf(other.address, id, lastSeq);
    const waits: number[] = [];
    for (let clock = 10; clock < 20; clock++) {
      const heard = feed.next();
      const started = performance.now();
      await write(one.address, id, 'd1-a', clock);
      expect(clocksOf(await heard)).toContain(clock);
      waits.push(performance.now() - started);
    }
    await feed.return(undefined);
    // They look for themselves every 15 s; a notice that were lost would show as such a wait.
    expect(Math.max(...waits), waits.join(' ')).toBeLessThan(10_000);
    console.log(`    heard after ${waits.map((ms) => ms.toFixed(0)).join(', ')} ms`);
  });

  test('count the operations of one build without gaps, whoever writes', async () => {
    const [one, other] = [await oneMore(), await oneMore()];
    const { id, lastSeq } = await newBuild(one.address);
    const clocks = Array.from({ length: 25 }, (_, n) => 10 + n);
    await Promise.all(
      [one, other].map(async ({ address }, n) => {
        for (const clock of clocks) await write(address, id, `d${n}-a`, clock);
      }),
    );
    const path = `/api/documents/${id}/operations?after=0`;
    const [seen, seenByOther] = await Promise.all(
      [one, other].map(({ address }) => send<{ operations: { seq: number }[] }>(address, path)),
    );
    expect(seen.operations.map(({ seq }) => seq)).toEqual(seen.operations.map((_, n) => n + 1));
    expect(seen.operations.length).toBe(lastSeq + 50);
    expect(seenByOther.operations).toEqual(seen.operations);
  });

  test('hear of each other again after their connections were cut', async () => {
    const [one, other] = [await oneMore(), await oneMore()];
    const { id, lastSeq } = await newBuild(one.address);
    const feed = feedOf(other.address, id, lastSeq);
    const admin = new pg.Client({ connectionString: process.env.TEST_DATABASE_URL });
    await admin.connect();
    const database = new URL(scratch.address).pathname.slice(1);
    const heard = feed.next();
    await admin.query('select pg_terminate_backend(pid) from pg_stat_activity where datname = $1', [
      database,
    ]);
    await admin.end();
    let written = false;
    for (let tries = 0; !written; tries++) {
      written = await write(one.address, id, 'd1-a', 10).then(
        () => true,
        (error: Error) => {
          expect(error.message).toMatch(/does not answer; this change was not saved/);
          if (tries > 50) throw error;
          return false;
        },
      );
    }
    // As a page does: a feed that ended is asked for again, from where it was.
    const first = await heard;
    const again = first.done ? feedOf(other.address, id, lastSeq) : feed;
    expect(clocksOf(first.done ? await again.next() : first)).toEqual([10]);
    await write(one.address, id, 'd1-a', 11);
    expect(clocksOf(await again.next())).toEqual([11]);
    await again.return(undefined);
  });

  test('let a device in, and shut it out, for both', async () => {
    const options = { databaseUrl: scratch.address, port: 0, host: '127.0.0.1', share: true };
    const one = await serve({ ...options, dataFolder: join(folder, 'a') });
    const other = await serve({ ...options, dataFolder: join(folder, 'b') });
    const elsewhere = { 'x-forwarded-for': '192.0.2.7', 'content-type': 'application/json' };
    const paired = await fetch(`${one.address}/api/pair`, {
      method: 'POST',
      headers: elsewhere,
      body: JSON.stringify({ code: one.pairing!.code, name: 'Tablet' }),
    });
    const cookie = paired.headers.get('set-cookie')!.split(';')[0];
    const status = async () =>
      (await fetch(`${other.address}/api/documents`, { headers: { ...elsewhere, cookie } })).status;
    expect(await status()).toBe(200);
    const { sessions } = await send<{ sessions: { id: string }[] }>(other.address, '/api/sharing');
    await send(one.address, `/api/sharing/sessions/${sessions[0].id}/end`, {});
    expect(await status()).toBe(401);
    await Promise.all([one.close(), other.close()]);
  });

  test('take up the job of one that was killed', async () => {
    const one = await oneMore();
    await nameSeries(one.address);
    for (let builds = 0; builds < 2; builds++) await send(one.address, '/api/documents/demo/copy', {});
    const { id } = await ask(one.address, '/api/jobs', learn);
    await lookUntil(one.address, id, ({ state, done }) => state === 'running' && done >= 1);
    await one.end('SIGKILL');
    const other = await oneMore();
    const ended = await lookUntil(
      other.address,
      id,
      ({ state }) => state !== 'running' && state !== 'waiting',
    );
    expect(ended).toMatchObject({ state: 'done', attempts: 2, done: 4, total: 4, result: { blanks: 3 } });
  }, 180_000);

  test('call off a job the other works on', async () => {
    const [one, other] = [await oneMore(), await oneMore()];
    await nameSeries(one.address);
    for (let builds = 0; builds < 2; builds++) await send(one.address, '/api/documents/demo/copy', {});
    const { id } = await ask(one.address, '/api/jobs', learn);
    await lookUntil(one.address, id, ({ state }) => state === 'running');
    for (const { address } of [one, other]) await send(address, `/api/jobs/${id}/cancel`, {});
    const next = await send<JobStatus>(other.address, '/api/jobs', {
      kind: 'sample shelf',
      input: { builds: ['none'] },
    });
    expect(await lookUntil(other.address, next.id, ({ state }) => state === 'done')).toMatchObject({
      result: [],
    });
    expect(await send<JobStatus>(one.address, `/api/jobs/${id}`)).toMatchObject({ state: 'cancelled' });
  }, 120_000);
});

describe('a start that cannot be says why, without the password', () => {
  test.each([
    ['a database that is not there', { pathname: '/none_such' }, /no database .*createdb/],
    ['a server that is not there', { port: '1' }, /does not answer.*DATABASE_URL/],
  ])('%s', async (_, change, words) => {
    const url = new URL(scratch.address);
    url.password = 'open-sesame';
    Object.assign(url, change);
    const error = await serve({ dataFolder: folder, port: 0, databaseUrl: url.href }).catch((e: Error) => e);
    expect((error as Error).message).toMatch(words);
    expect((error as Error).message).not.toContain('open-sesame');
  });

  test('a database of a newer Fairbend', async () => {
    const options = { dataFolder: folder, port: 0, databaseUrl: scratch.address };
    await (await serve(options)).close();
    const client = new pg.Client({ connectionString: scratch.address });
    await client.connect();
    await client.query("insert into kysely_migration values ('9999-later', '2030-01-01T00:00:00Z')");
    await client.end();
    await expect(serve(options)).rejects.toThrow(/written by a newer Fairbend.*Update/);
  });
});
