import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type { AttachmentAnswer, DocumentList, DocumentSummary, OperationsAnswer } from '../record/api.ts';
import type { RecordStanding } from '../record/record-api.ts';
import { type RunningServer, serve } from './serve.ts';

let folder = '';
let server: RunningServer;
beforeEach(async () => {
  folder = mkdtempSync(join(tmpdir(), 'fairbend-erase-'));
  server = await serve({ dataFolder: folder, port: 0 });
});
afterEach(async () => {
  await server.close();
  rmSync(folder, { recursive: true, force: true });
});

async function ask<T>(path: string, body?: unknown): Promise<{ status: number; body: T }> {
  const bytes = body instanceof Uint8Array;
  const headers = { 'content-type': bytes ? 'application/octet-stream' : 'application/json' };
  const init =
    body === undefined
      ? {}
      : { method: 'POST', headers, body: bytes ? (body as BodyInit) : JSON.stringify(body) };
  const response = await fetch(`${server.address}/api${path}`, init);
  return { status: response.status, body: (await response.json().catch(() => undefined)) as T };
}

const name = 'An Invented Anglerfish';
const inFiles = (text: string | Uint8Array) =>
  readdirSync(folder).filter((file) => readFileSync(join(folder, file)).includes(Buffer.from(text)));

test('a customer erased is in no value, no history, no printed state, no search and no byte of the files', async () => {
  const changes = [
    { path: ['about', '-', 'title'], value: 'Brook' },
    { path: ['about', '-', 'customer'], value: name },
  ];
  const { id } = (await ask<DocumentSummary>('/documents', { kind: 'build', changes })).body;
  await ask(`/documents/${id}/revisions`, { engineVersion: '1.0.0' });
  expect(inFiles(name)).not.toEqual([]);
  const { status, body } = await ask<DocumentSummary>(`/documents/${id}/erase`, { what: 'customer' });
  expect(status).toBe(200);
  expect(body).toMatchObject({ title: 'Brook', customer: '' });
  const { operations } = (await ask<OperationsAnswer>(`/documents/${id}/operations?after=0`)).body;
  expect(JSON.stringify(operations)).not.toContain(name);
  // That something stood there, and that it was erased, stays.
  expect(operations.filter(({ path }) => path[2] === 'customer').map(({ gesture }) => gesture)).toEqual([
    'create',
    'erase',
  ]);
  const { revisions } = (await ask<{ revisions: { revision: string }[] }>(`/documents/${id}/revisions`)).body;
  const frozen = await ask(`/documents/${id}/revisions/${revisions[0].revision}`);
  expect(frozen.status).toBe(200);
  expect(JSON.stringify(frozen.body)).not.toContain(name);
  expect((await ask<DocumentList>('/documents?search=anglerfish')).body.total).toBe(0);
  expect((await ask<RecordStanding>('/record/check', {})).body.damaged).toEqual([]);
  expect(inFiles(name)).toEqual([]);
});

test('a picture erased is gone once no other build names it', async () => {
  const noise = Uint8Array.from({ length: 64 * 64 }, (_, index) => (index * index * 31 + index) & 255);
  const png = new Uint8Array(encode({ width: 64, height: 64, channels: 1, data: noise }));
  const { hash } = (await ask<AttachmentAnswer>('/attachments', png)).body;
  const changes = [{ path: ['attachments', 'p', 'content'], value: hash }];
  const [one, other] = await Promise.all(
    [0, 1].map(async () => (await ask<DocumentSummary>('/documents', { kind: 'build', changes })).body.id),
  );
  await ask(`/documents/${one}/erase`, { what: 'picture', row: 'p' });
  expect((await ask(`/attachments/${hash}`)).status).toBe(200);
  await ask(`/documents/${other}/erase`, { what: 'picture', row: 'p' });
  expect((await ask(`/attachments/${hash}`)).status).toBe(404);
  expect(inFiles(png.subarray(60, 160))).toEqual([]);
  expect((await ask<RecordStanding>('/record/check', {})).body.damaged).toEqual([]);
});

test('at the limit the shop set, pictures and files are refused in words; changes go on, and erasing makes room', async () => {
  const noise = (seed: number) => {
    let state = seed;
    const next = () => {
      state = (Math.imul(state, 1_664_525) + 1_013_904_223) | 0;
      return state >>> 24;
    };
    const data = Uint8Array.from({ length: 1200 * 1000 }, next);
    return new Uint8Array(encode({ width: 1200, height: 1000, channels: 1, data }));
  };
  const { id: shop } = (await ask<DocumentSummary>('/shop')).body;
  const limit = async (value: number | null, clock: number) => {
    const path = ['settings', '-', 'spaceLimitMb'];
    const operation = { id: `d-a.${clock}.0`, device: 'd-a', clock, gesture: `g${clock}`, path, value };
    const at = '2026-03-01T09:00:00.000Z';
    return ask(`/documents/${shop}/operations`, { operations: [{ ...operation, old: null, at }] });
  };
  const taken = async () => (await ask<RecordStanding>('/record')).body.space!.record;
  const { hash } = (await ask<AttachmentAnswer>('/attachments', noise(1))).body;
  const changes = [{ path: ['attachments', 'p', 'content'], value: hash }];
  const { id } = (await ask<DocumentSummary>('/documents', { kind: 'build', changes })).body;
  const file = await (await fetch(`${server.address}/api/documents/${id}/file`)).json();
  expect((await limit((await taken()) / 1e6, 1)).status).toBe(200);
  const before = await taken();
  const refused = await ask<{ message: string }>('/attachments', noise(2));
  expect(refused.status).toBe(409);
  expect(refused.body.message).toMatch(
    /MB more would take the record to .* MB; the shop’s limit is .* MB.*Erase pictures.*Settings/,
  );
  expect((await ask('/files', file)).status).toBe(409);
  expect(await taken()).toBe(before);
  // What is written is kept, limit or not.
  expect((await limit(1, 2)).status).toBe(200);
  await ask(`/documents/${id}/erase`, { what: 'picture', row: 'p' });
  expect(await taken()).toBeLessThan(before);
  expect((await limit(null, 3)).status).toBe(200);
  expect((await ask('/attachments', noise(2))).status).toBe(201);
});
