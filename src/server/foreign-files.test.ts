import { createHash } from 'node:crypto';
import { crc32 } from 'node:zlib';
import fc from 'fast-check';
import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { history } from '../../test/kit/arbitrary-record.ts';
import { operation } from '../../test/kit/one-operation.ts';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import type {
  DocumentAnswer,
  DocumentSummary,
  ImportAnswer,
  OperationsAnswer,
  Refusal,
} from '../record/api.ts';
import { validateOperation } from '../record/validate.ts';

describe('a build file from elsewhere', () => {
  let bench: TestApp;
  beforeEach(async () => {
    bench = await testApp();
  });
  afterEach(() => bench.close());

  const send = (file: object) =>
    bench.ask('POST', '/api/files', { format: 'fairbend build', version: 1, ...file });
  const imported = async (file: object) => {
    const answer = await send(file);
    const body = await answer.json();
    expect(answer.status, JSON.stringify(body)).toBe(201);
    return body as ImportAnswer;
  };

  test.each([
    ['equal values', { about: { title: 'Brook' } }],
    ['values the file itself changed by hand', { about: { title: 'Lake' } }],
  ])(
    'whose clock ran off, with %s, takes edits for ever and goes through the shop’s own export',
    async (_, build) => {
      const file = { build, history: [operation(3, 'River'), operation(2 ** 48, 'Brook')] };
      const { document, notes } = await imported(file);
      expect(notes.join()).toMatch(/counter of its changes had run off.*counted anew/);
      expect(document.title).toBe(build.about.title);
      const { clock } = (await (
        await bench.ask('GET', `/api/documents/${document.id}`)
      ).json()) as DocumentAnswer;
      expect(clock).toBeLessThan(10);
      const edit = await bench.ask('POST', `/api/documents/${document.id}/operations`, {
        operations: [operation(clock + 1, 'Pond')],
      });
      expect(edit.status).toBe(200);
      const text = await (await bench.ask('GET', `/api/documents/${document.id}/file`)).text();
      expect((await imported(JSON.parse(text))).document.title).toBe('Pond');
    },
  );

  const exif = [...'Exif\0\0 Invented Camera GPSLATITUDE 47.1234'].map((letter) => letter.charCodeAt(0));
  const plain = new Uint8Array(
    jpeg.encode({ width: 32, height: 32, data: new Uint8Array(4096).fill(90) }, 90).data,
  );
  const told = Uint8Array.from([
    ...plain.subarray(0, 20),
    ...[0xff, 0xe1, 0, exif.length + 2, ...exif],
    ...plain.subarray(20),
  ]);
  const held = (bytes: Uint8Array, type: string) => {
    const hash = createHash('sha256').update(bytes).digest('hex');
    const attachments = [{ hash, type, base64: Buffer.from(bytes).toString('base64') }];
    return { hash, file: { build: { attachments: [{ id: 'a', content: hash }] }, attachments } };
  };

  test('keeps of its pictures nothing but the picture, and says so', async () => {
    const { hash, file } = held(told, 'image/jpeg');
    const { document, notes, attachmentsMissing } = await imported(file);
    expect(notes.join()).toMatch(/One picture told where, when or with what/);
    expect(attachmentsMissing).toEqual([]);
    const { cells } = (await (
      await bench.ask('GET', `/api/documents/${document.id}`)
    ).json()) as DocumentAnswer;
    const kept = new Map(cells).get('attachments/a/content')!.value as string;
    expect(kept).not.toBe(hash);
    const bytes = Buffer.from(await (await bench.ask('GET', `/api/attachments/${kept}`)).arrayBuffer());
    expect(bytes.equals(plain)).toBe(true);
    expect((await bench.ask('GET', `/api/attachments/${hash}`)).status).toBe(404);
  });

  const huge = Buffer.from(encode({ width: 16, height: 16, channels: 1, data: new Uint8Array(256) }));
  huge.writeUInt32BE(60_000, 16);
  huge.writeUInt32BE(60_000, 20);
  huge.writeUInt32BE(crc32(huge.subarray(12, 29)), 29);
  const heic = Buffer.from('\0\0\0\x18ftypheic\0\0\0\0mif1heic GPSLATITUDE', 'latin1');
  test.each([
    ['of 3,600 megapixels', huge, 'image/png', /Attachment 1: Not taken: .*3600 megapixels/],
    ['in HEIC', heic, 'image/heic', /Attachment 1: This is a HEIC picture.*Set the camera to JPEG/],
  ])('with a picture %s is refused with what to do, and stores nothing', async (_, bytes, type, words) => {
    const answer = await send(held(bytes, type).file);
    expect(answer.status).toBe(422);
    expect(((await answer.json()) as Refusal).message).toMatch(words);
    expect(await bench.counts()).toMatchObject({ documents: 0, attachments: 0 });
    expect((await bench.ask('POST', '/api/attachments', new Uint8Array(bytes))).status).toBe(422);
  });

  test('and what is served of it runs nothing', async () => {
    const { file } = held(plain, 'text/html');
    const { document } = await imported(file);
    const hash = file.attachments[0].hash;
    for (const path of [`/api/attachments/${hash}`, `/api/documents/${document.id}/file`]) {
      const { headers } = await bench.ask('GET', path);
      expect(headers.get('content-security-policy')).toBe("default-src 'none'; sandbox");
      expect(headers.get('x-content-type-options')).toBe('nosniff');
    }
    expect((await bench.ask('GET', `/api/attachments/${hash}`)).headers.get('content-type')).toBe(
      'image/jpeg',
    );
  });

  test('whatever the server stored is exported and taken in again, equal', async () => {
    await fc.assert(
      fc.asyncProperty(history, async (operations) => {
        const { id } = (await (
          await bench.ask('POST', '/api/documents', { kind: 'build' })
        ).json()) as DocumentSummary;
        if (operations.length > 0) await bench.ask('POST', `/api/documents/${id}/operations`, { operations });
        const text = await (await bench.ask('GET', `/api/documents/${id}/file`)).text();
        const { document } = await imported(JSON.parse(text));
        const stored = async (of: string) => {
          const answer = await bench.ask('GET', `/api/documents/${of}/operations?after=0`);
          return ((await answer.json()) as OperationsAnswer).operations.map(
            ({ receivedAt: _, ...rest }) => rest,
          );
        };
        expect(await stored(document.id)).toEqual(await stored(id));
        for (const { seq: _, ...rest } of await stored(document.id))
          expect(validateOperation('build', rest)).toEqual([]);
      }),
      { numRuns: 40, seed: 1616 },
    );
  });
});
