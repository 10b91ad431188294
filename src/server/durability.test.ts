import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { type ScratchDatabase, scratchDatabase } from '../../test/kit/scratch-database.ts';
import {
  compileServer,
  type ServerProcess,
  seededRandom,
  startServer,
} from '../../test/kit/server-process.ts';
import type { DocumentSummary, OperationsAnswer } from '../record/api.ts';
import type { Operation, StoredOperation } from '../record/operation.ts';
import { openSqlite } from './sqlite.ts';

/** Times the server is killed; more in a long run: KILLS=200. */
const kills = Number(process.env.KILLS ?? 20);
const writers = 3;
const operationsPerGesture = 4;

const folder = mkdtempSync(join(tmpdir(), 'fairbend-kill-'));
let scratch: ScratchDatabase | undefined;
beforeAll(async () => {
  compileServer();
  if (process.env.TEST_DATABASE_URL) scratch = await scratchDatabase();
});
afterAll(async () => {
  await scratch?.drop();
  rmSync(folder, { recursive: true, force: true });
});
const start = () => startServer(folder, { databaseUrl: scratch?.address });

/** Gestures acknowledged to a writer, and those sent whose answer never came. */
interface Sent {
  acknowledged: Map<string, number>;
  all: Map<string, number>;
}

test(
  `${kills} kills in the middle of writing lose no acknowledged change, tear no gesture, and leave the database whole`,
  async () => {
    const random = seededRandom(4870);
    const sent: Sent = { acknowledged: new Map(), all: new Map() };
    let server = await start();
    const { id } = await post<DocumentSummary>(server, '/api/documents', { kind: 'build' });
    for (let kill = 0; kill < kills; kill++) {
      await writeUntilKilled(server, id, kill, Math.floor(random() * 12), sent);
      server = await start();
      checkStored(await readAll(server, id), sent);
    }
    expect(sent.acknowledged.size).toBeGreaterThan(kills * 3);
    await server.end('SIGTERM');
    if (scratch) return;
    const { database } = openSqlite(join(folder, 'fairbend.sqlite'));
    expect(database.prepare('PRAGMA integrity_check').all([])).toEqual([{ integrity_check: 'ok' }]);
    expect(database.prepare('PRAGMA foreign_key_check').all([])).toEqual([]);
    database.close();
  },
  kills * 10_000 + 60_000,
);

/** Writers send gesture after gesture; after `more` acknowledgements beyond the first few the process is killed. */
async function writeUntilKilled(
  server: ServerProcess,
  document: string,
  round: number,
  more: number,
  sent: Sent,
): Promise<void> {
  let acknowledgements = 0;
  let killed: Promise<unknown> | undefined;
  const write = async (writer: number) => {
    for (let count = 0; !killed; count++) {
      const operations = gesture(`d${writer}-r${round}`, round * 10_000 + count + 1);
      sent.all.set(operations[0].gesture, operations.length);
      try {
        await post(server, `/api/documents/${document}/operations`, { operations });
      } catch {
        return;
      }
      sent.acknowledged.set(operations[0].gesture, operations.length);
      acknowledgements += 1;
      // The other writers' requests are on their way at this moment.
      if (acknowledgements > 3 + more) killed ??= server.end('SIGKILL');
    }
  };
  await Promise.all(Array.from({ length: writers }, (_, writer) => write(writer)));
  await killed;
}

function gesture(device: string, clock: number): Operation[] {
  return Array.from({ length: operationsPerGesture }, (_, index) => ({
    id: `${device}.${clock}.${index}`,
    device,
    clock,
    gesture: `write.${device}.${clock}`,
    path: ['readings', `r${index}`, 'drop'],
    old: null,
    value: { si: (clock % 1000) / 1000, text: `${clock} of ${device}` },
    at: '2026-03-01T09:00:00Z',
  }));
}

function checkStored(stored: readonly StoredOperation[], sent: Sent): void {
  expect(stored.map((operation) => operation.seq)).toEqual(stored.map((_, index) => index + 1));
  const found = new Map<string, number>();
  for (const { gesture: name } of stored) found.set(name, (found.get(name) ?? 0) + 1);
  found.delete('create');
  const lost = [...sent.acknowledged.keys()].filter((name) => !found.has(name));
  expect(lost).toEqual([]);
  const torn = [...found].filter(([name, count]) => count !== sent.all.get(name));
  expect(torn).toEqual([]);
}

async function readAll(server: ServerProcess, document: string): Promise<StoredOperation[]> {
  const stored: StoredOperation[] = [];
  let more = true;
  while (more) {
    const after = stored.at(-1)?.seq ?? 0;
    const response = await fetch(`${server.address}/api/documents/${document}/operations?after=${after}`);
    const answer = (await response.json()) as OperationsAnswer;
    stored.push(...answer.operations);
    more = answer.more;
  }
  return stored;
}

async function post<T>(server: ServerProcess, path: string, body: unknown): Promise<T> {
  const response = await fetch(server.address + path, {
    method: 'POST',
    headers: { 'content-type': 'application/json' },
    body: JSON.stringify(body),
  });
  if (!response.ok) throw new Error(await response.text());
  return (await response.json()) as T;
}
