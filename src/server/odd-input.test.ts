import { mkdtempSync, rmSync } from 'node:fs';
import { request } from 'node:http';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import type { DocumentList, DocumentSummary, Refusal } from '../record/api.ts';
import { serve } from './serve.ts';

let bench: TestApp;
beforeEach(async () => {
  bench = await testApp();
});
afterEach(() => bench.close());

const create = (title: unknown) =>
  bench.ask('POST', '/api/documents', {
    kind: 'build',
    changes: [{ path: ['about', '-', 'title'], value: title }],
  });

describe('a name', () => {
  test.each([
    ['that is a script', '<script>alert(1)</script>"><img src=x onerror=alert(1)>'],
    ['of emoji', '🎣👨‍👩‍👧‍👦 9 ft'],
    ['written from right to left', 'חכה \u202Eevil\u202C 5'],
    ['of letters in two forms', 'Bächlein'.normalize('NFD')],
    ['that looks like SQL', "'; drop table documents; --"],
  ])('%s comes back letter for letter, is found, and leads no file astray', async (_, title) => {
    const { id } = (await (await create(title)).json()) as DocumentSummary;
    const word = encodeURIComponent(title.split(' ')[0]);
    const { documents } = (await (
      await bench.ask('GET', `/api/documents?search=${word}`)
    ).json()) as DocumentList;
    expect(documents.map((found) => found.title)).toEqual([title]);
    const file = await bench.ask('GET', `/api/documents/${id}/file`);
    expect(file.headers.get('content-type')).toMatch(/^application\/json/);
    expect(file.headers.get('content-disposition')).toMatch(/^attachment; filename="[A-Za-z0-9-]+\.json"$/);
    expect(JSON.parse(await file.text()).build.about.title).toBe(title);
  });

  test('of 10,000 letters is refused with its field and what to do', async () => {
    const answer = await create('x'.repeat(10_000));
    expect(answer.status).toBe(422);
    const { findings } = (await answer.json()) as Refusal;
    expect(findings).toMatchObject([{ path: 'about/-/title', message: expect.stringMatching(/\d/) }]);
    expect(await bench.counts()).toMatchObject({ documents: 0, operations: 0 });
  });
});

describe('a build file', () => {
  const text = JSON.stringify({
    format: 'fairbend build',
    version: 1,
    build: { about: { title: 'Bächlein' } },
  });
  test.each([
    ['in UTF-16', Buffer.from(`\ufeff${text}`, 'utf16le'), /UTF-8/],
    ['in Latin-1', Buffer.from(text, 'latin1'), /UTF-8/],
    ['cut in half', Buffer.from(text.slice(0, text.length / 2)), /JSON/],
    ['of zeros', Buffer.alloc(5000), /JSON/],
    ['nested ten thousand deep', Buffer.from('['.repeat(10_000) + ']'.repeat(10_000)), /./],
  ])('%s is refused, and nothing is stored', async (_, bytes, words) => {
    const answer = await bench.ask('POST', '/api/files', new Uint8Array(bytes));
    expect(answer.status).toBe(422);
    expect(((await answer.json()) as Refusal).message).toMatch(words);
    expect(await bench.counts()).toMatchObject({ documents: 0, operations: 0, attachments: 0 });
  });

  test('with a mark of UTF-8 before it is read', async () => {
    expect((await bench.ask('POST', '/api/files', `\ufeff${text}`)).status).toBe(201);
  });
});

describe.skipIf(process.env.TEST_DATABASE_URL)('a body of 1 GB', () => {
  const gigabyte = 1024 ** 3;
  const chunk = Buffer.alloc(1024 ** 2, 0x20);

  /** Sends until an answer comes or the connection goes; answers the status and how much was taken. */
  function pour(address: string, path: string, headers: Record<string, string>) {
    return new Promise<{ status: number; sent: number }>((resolve) => {
      let sent = 0;
      let status = 0;
      const type = path === '/api/attachments' ? 'application/octet-stream' : 'application/json';
      const sending = request(`${address}${path}`, {
        method: 'POST',
        headers: { 'content-type': type, ...headers },
      });
      const end = () => resolve({ status, sent });
      sending.on('response', (answer) => {
        status = answer.statusCode!;
        answer.resume();
        sending.destroy();
      });
      sending.on('error', () => undefined).on('close', end);
      const more = () => {
        while (sent < gigabyte && !sending.destroyed) {
          sent += chunk.length;
          if (!sending.write(chunk)) return void sending.once('drain', more);
        }
        if (!sending.destroyed) sending.end();
      };
      more();
    });
  }

  test.each([
    ['/api/attachments', 'announced', { 'content-length': String(gigabyte) }],
    ['/api/attachments', 'unannounced', {}],
    ['/api/files', 'unannounced', {}],
    ['/api/documents', 'announced', { 'content-length': String(gigabyte) }],
  ])('%s, %s, is turned away long before its end, and the server goes on', async (path, _, headers) => {
    const folder = mkdtempSync(join(tmpdir(), 'fairbend-pour-'));
    const server = await serve({ dataFolder: folder, port: 0 });
    const { status, sent } = await pour(server.address, path, headers as Record<string, string>);
    expect(status).toBe(413);
    expect(sent).toBeLessThan(gigabyte / 4);
    expect((await fetch(`${server.address}/api/info`)).status).toBe(200);
    await server.close();
    rmSync(folder, { recursive: true, force: true });
  });
});
