import { mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import fc from 'fast-check';
import { encode } from 'fast-png';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { history } from '../../../test/kit/arbitrary-record.ts';
import { type ScratchDatabase, scratchDatabase } from '../../../test/kit/scratch-database.ts';
import { seededRandom } from '../../engine/numerics/seeded-random.ts';
import { openDatabase } from '../database.ts';
import { serve } from '../serve.ts';
import { FileSessions } from '../sharing/file-sessions.ts';
import { SqlSessions } from '../sharing/sql-sessions.ts';
import { moveRecord } from './move-record.ts';

let folder = '';
let scratch: ScratchDatabase;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-move-'));
  scratch = await scratchDatabase();
});
afterEach(async () => {
  await scratch.drop();
  rmSync(folder, { recursive: true, force: true });
});
const now = () => new Date('2026-03-01T09:00:00Z');
const data = (name: string) => join(folder, name);

/** A picture that no packing makes small. */
function noise(length: number): Uint8Array {
  const random = seededRandom(7);
  return Uint8Array.from({ length }, () => Math.floor(256 * random()));
}

/** A data folder with builds of many devices' work, a picture and a frozen revision. */
async function fill(path: string): Promise<void> {
  const server = await serve({ dataFolder: path, port: 0 });
  const ask = async <T>(to: string, body: unknown, type = 'application/json') => {
    const sent = body instanceof Uint8Array ? body : JSON.stringify(body);
    const init = { method: 'POST', headers: { 'content-type': type }, body: sent as BodyInit };
    const response = await fetch(`${server.address}/api${to}`, init);
    const answer = await response.json();
    expect(response.ok, JSON.stringify(answer)).toBe(true);
    return answer as T;
  };
  const png = encode({ width: 160, height: 160, channels: 3, data: noise(160 * 160 * 3) });
  await ask('/attachments', png, 'application/octet-stream');
  for (const log of fc.sample(history, { seed: 20260301, numRuns: 12 })) {
    const { id } = await ask<{ id: string }>('/documents', { kind: 'build' });
    if (log.length > 0) await ask(`/documents/${id}/operations`, { operations: log });
    await ask(`/documents/${id}/revisions`, { engineVersion: '1' });
  }
  await server.close();
}

/** Every row of the record, each in one form whichever database it is in. */
async function rowsOf(place: string): Promise<Record<string, unknown[]>> {
  const { db } = await openDatabase(place);
  const all: Record<string, unknown[]> = {};
  for (const table of ['documents', 'operations', 'attachments', 'revisions', 'identity'] as const) {
    const rows = (await db.selectFrom(table).selectAll().execute()) as Record<string, unknown>[];
    const texts = rows.map((row) =>
      JSON.stringify(row, (_, value) =>
        value?.type === 'Buffer' ? value.data : value instanceof Uint8Array ? [...value] : value,
      ),
    );
    all[table] = texts.sort();
  }
  await db.destroy();
  return all;
}

test('a record moved to PostgreSQL and back is equal in every row, and its devices stay paired', async () => {
  await fill(data('a'));
  const token = await new FileSessions(data('a'), now).begin('Tablet');
  const before = await rowsOf(join(data('a'), 'fairbend.sqlite'));
  expect(before.operations.length).toBeGreaterThan(100);
  const moved = await moveRecord(data('a'), scratch.address, now());
  expect(moved).toMatchObject({ documents: before.documents.length, attachments: 1, sessions: 1 });
  expect(await rowsOf(scratch.address)).toEqual(before);
  const { db } = await openDatabase(scratch.address);
  expect(await new SqlSessions(db, now).knows(token)).toBe(true);
  await db.destroy();
  await moveRecord(scratch.address, data('b'), now());
  expect(await rowsOf(join(data('b'), 'fairbend.sqlite'))).toEqual(before);
  expect(await new FileSessions(data('b'), now).knows(token)).toBe(true);
  expect(await rowsOf(join(data('a'), 'fairbend.sqlite'))).toEqual(before);
});

describe('a move is refused, and nothing is changed, when', () => {
  test('the target holds a record', async () => {
    await fill(data('a'));
    await moveRecord(data('a'), scratch.address, now());
    const before = await rowsOf(scratch.address);
    await expect(moveRecord(data('a'), scratch.address, now())).rejects.toThrow(
      /holds \d+ documents already/,
    );
    expect(await rowsOf(scratch.address)).toEqual(before);
  });

  test('there is nothing to move', async () => {
    await expect(moveRecord(data('none'), scratch.address, now())).rejects.toThrow(/There is no record in/);
  });

  test('a server uses either side', async () => {
    const options = { dataFolder: data('a'), port: 0, databaseUrl: scratch.address };
    const server = await serve(options);
    await expect(moveRecord(scratch.address, data('b'), now())).rejects.toThrow(
      /A server uses .*End it first/,
    );
    await server.close();
    const other = await serve({ dataFolder: data('c'), port: 0 });
    await expect(moveRecord(data('c'), data('b'), now())).rejects.toThrow(/A server uses .*End it first/);
    await other.close();
  });

  test('it breaks off in the middle: the target is as empty as before', async () => {
    await fill(data('a'));
    const { db } = await openDatabase(join(data('a'), 'fairbend.sqlite'));
    // PostgreSQL's texts hold no NUL, SQLite's do.
    await db.updateTable('operations').set({ new_value: 'a\0b' }).where('seq', '=', 2).execute();
    await db.destroy();
    await expect(moveRecord(data('a'), scratch.address, now())).rejects.toThrow();
    expect(await rowsOf(scratch.address)).toMatchObject({ documents: [], operations: [], attachments: [] });
  });
});
