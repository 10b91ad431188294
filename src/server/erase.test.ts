import { mkdtempSync, readdirSync, readFileSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { afterEach, beforeEach, expect, test } from 'vitest';
import type {
  AttachmentAnswer,
  DocumentList,
  DocumentSummary,
  OperationsAnswer,
  RecordStanding,
} from '../record/api.ts';
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
