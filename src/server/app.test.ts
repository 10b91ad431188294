import { encode } from 'fast-png';
import jpeg from 'jpeg-js';
import { afterEach, beforeEach, describe, expect, test } from 'vitest';
import { type TestApp, testApp } from '../../test/kit/test-app.ts';
import type {
  AttachmentAnswer,
  DocumentAnswer,
  DocumentSummary,
  ImportAnswer,
  Revision,
} from '../record/api.ts';
import type { Operation, Path } from '../record/operation.ts';
import { shortNumber } from '../record/short-number.ts';

const png = new Uint8Array(encode({ width: 16, height: 16, channels: 1, data: new Uint8Array(256) }));
const title: Path = ['about', '-', 'title'];

let bench: TestApp;
beforeEach(async () => {
  bench = await testApp();
});
afterEach(() => bench.close());

async function answered<T>(response: Response | Promise<Response>, status = 200): Promise<T> {
  const answer = await response;
  const body = await answer.json();
  expect(body, JSON.stringify(body)).toBeDefined();
  expect(answer.status, JSON.stringify(body)).toBe(status);
  return body as T;
}

function createBuild(name: string): Promise<DocumentSummary> {
  const changes = [{ path: title, value: name }];
  return answered(bench.ask('POST', '/api/documents', { kind: 'build', changes }), 201);
}

function operation(clock: number, changes: Partial<Operation> = {}): Operation {
  const at = '2026-03-01T09:00:00Z';
  const path: Path = ['sections', 's1', 'name'];
  return {
    id: `d1-a.${clock}.0`,
    device: 'd1-a',
    clock,
    gesture: `edit.${clock}`,
    path,
    old: null,
    value: `v${clock}`,
    at,
    ...changes,
  };
}

function append(id: string, operations: unknown[]): Promise<Response> {
  return bench.ask('POST', `/api/documents/${id}/operations`, { operations });
}

describe('operations', () => {
  test('are counted from 1 without gaps, and give the state', async () => {
    const { id, lastSeq } = await createBuild('Brook');
    expect(lastSeq).toBe(2);
    expect(await answered(append(id, [operation(5), operation(6)]))).toEqual({
      accepted: [
        { id: 'd1-a.5.0', seq: 3 },
        { id: 'd1-a.6.0', seq: 4 },
      ],
      lastSeq: 4,
    });
    const answer = await answered<DocumentAnswer>(bench.ask('GET', `/api/documents/${id}`));
    expect(Object.fromEntries(answer.cells)['sections/s1/name']).toMatchObject({ value: 'v6', clock: 6 });
    expect(answer).toMatchObject({ clock: 6, lastSeq: 4, document: { title: 'Brook', lastSeq: 4 } });
  });

  test('sent again are acknowledged again and stored once', async () => {
    const { id } = await createBuild('Brook');
    const first = await answered(append(id, [operation(5)]));
    expect(await answered(append(id, [operation(5)]))).toEqual(first);
    expect(await answered(append(id, [operation(5), operation(5)]))).toMatchObject({ lastSeq: 3 });
    expect((await bench.counts()).operations).toBe(3);
  });

  test('one with a known id that says something else is a conflict, and nothing is stored', async () => {
    const { id } = await createBuild('Brook');
    await append(id, [operation(5)]);
    const response = await append(id, [operation(6), operation(5, { value: 'else' })]);
    expect(response.status).toBe(409);
    expect((await bench.counts()).operations).toBe(3);
  });

  test('one wrong among many: all are refused, the wrong one is named', async () => {
    const { id } = await createBuild('Brook');
    const wrong = operation(6, { path: ['sections', 's1', 'length'], value: { si: 99, text: '99' } });
    const { findings } = await answered<{ findings: unknown[] }>(append(id, [operation(5), wrong]), 422);
    expect(findings).toMatchObject([{ path: 'sections/s1/length' }]);
    expect((await bench.counts()).operations).toBe(2);
  });

  test('a clock that would end all editing is refused', async () => {
    const { id } = await createBuild('Brook');
    const { message } = await answered<{ message: string }>(append(id, [operation(2e6)]), 422);
    expect(message).toMatch(/clock 2000000 is too far ahead/);
  });

  test('of a document that is not there', async () => {
    expect((await append('nowhere', [operation(5)])).status).toBe(404);
  });
});

describe('the list of builds', () => {
  test('is searched by any words of title, customer and tags, whatever their case', async () => {
    const { id } = await createBuild('Bächlein 5 wt');
    await createBuild('Lake');
    await append(id, [
      operation(5, { path: ['about', '-', 'customer'], value: 'İpek_Ö' }),
      operation(6, { path: ['tags', 't1', 'text'], value: '100% cane-coloured' }),
    ]);
    const found = async (search: string) =>
      (
        await answered<{ documents: DocumentSummary[] }>(
          bench.ask('GET', `/api/documents?search=${encodeURIComponent(search)}`),
        )
      ).documents.map((document) => document.title);
    expect(await found('BÄCH')).toEqual(['Bächlein 5 wt']);
    expect(await found('cane 5')).toEqual(['Bächlein 5 wt']);
    expect(await found('100%')).toEqual(['Bächlein 5 wt']);
    expect(await found('ipe%k')).toEqual([]);
    expect(await found('k_ö')).toEqual(['Bächlein 5 wt']);
    expect(await found('')).toHaveLength(2);
    expect(await found(shortNumber(id))).toEqual(['Bächlein 5 wt']);
    expect(await found(shortNumber(id).slice(0, 3))).toEqual([]);
  });

  test('a build put away is out of it, and comes back', async () => {
    const { id } = await createBuild('Brook');
    expect(await answered(bench.ask('POST', `/api/documents/${id}/put-away`, {}))).toMatchObject({
      gone: true,
    });
    expect(await answered(bench.ask('GET', '/api/documents'))).toMatchObject({ total: 0 });
    expect(await answered(bench.ask('GET', '/api/documents?gone=true'))).toMatchObject({ total: 1 });
    await bench.ask('POST', `/api/documents/${id}/bring-back`, {});
    expect(await answered(bench.ask('GET', '/api/documents'))).toMatchObject({ total: 1 });
  });

  test('does not show the shop, which is there once', async () => {
    const shop = await answered(bench.ask('GET', '/api/shop'));
    expect(shop).toMatchObject({ id: 'shop', kind: 'shop' });
    expect(await answered(bench.ask('GET', '/api/shop'))).toEqual(shop);
    expect(await answered(bench.ask('GET', '/api/documents'))).toMatchObject({ total: 0 });
  });
});

describe('build files', () => {
  test('a build exported and imported is equal, with history, attachments and revisions', async () => {
    const { id } = await createBuild('Brook');
    const { hash } = await answered<{ hash: string }>(
      bench.ask('POST', '/api/attachments', png, { 'content-type': 'application/octet-stream' }),
      201,
    );
    await append(id, [
      operation(5, { path: ['attachments', 'a1', 'content'], value: hash }),
      operation(6),
      operation(7),
    ]);
    await answered(bench.ask('POST', `/api/documents/${id}/revisions`, { engineVersion: '1' }), 201);
    await append(id, [operation(8)]);
    const exported = await (await bench.ask('GET', `/api/documents/${id}/file`)).text();

    const other = await testApp();
    const imported = await answered<ImportAnswer>(other.ask('POST', '/api/files', exported), 201);
    expect(imported).toMatchObject({ attachmentsMissing: [], document: { title: 'Brook' } });
    const again = await (await other.ask('GET', `/api/documents/${imported.document.id}/file`)).text();
    expect(again).toBe(exported);
    const picture = await other.ask('GET', `/api/attachments/${hash}`);
    expect(new Uint8Array(await picture.arrayBuffer())).toEqual(png);
    expect(picture.headers.get('content-type')).toBe('image/png');
    await other.close();
  });

  test('without its attachments, it says which are missing', async () => {
    const { id } = await createBuild('Brook');
    const hash = 'a'.repeat(64);
    await append(id, [operation(5, { path: ['attachments', 'a1', 'content'], value: hash })]);
    const exported = await (await bench.ask('GET', `/api/documents/${id}/file?attachments=no`)).text();
    const { attachmentsMissing } = await answered<ImportAnswer>(
      bench.ask('POST', '/api/files', exported),
      201,
    );
    expect(attachmentsMissing).toEqual([hash]);
  });

  test.each([
    ['of a newer version', { format: 'fairbend build', version: 2, build: {} }],
    ['that is none', { hello: 1 }],
    ['with an unknown field', { format: 'fairbend build', version: 1, build: { about: { x: 1 } } }],
    [
      'with an attachment that is not what its hash says',
      {
        format: 'fairbend build',
        version: 1,
        build: {},
        attachments: [
          { hash: 'a'.repeat(64), type: 'image/png', base64: Buffer.from(png).toString('base64') },
        ],
      },
    ],
  ])('a file %s is refused and changes nothing', async (_, file) => {
    const before = await bench.counts();
    const { findings } = await answered<{ findings: unknown[] }>(bench.ask('POST', '/api/files', file), 422);
    expect(findings).toHaveLength(1);
    expect(await bench.counts()).toEqual(before);
  });

  test('a file that is far too large is refused before it is read', async () => {
    const body = new Uint8Array(65 * 1024 ** 2).fill(32);
    const response = await bench.ask('POST', '/api/files', body);
    expect(await answered(response, 413)).toMatchObject({
      message: 'The build file is larger than 64 MB. Look whether it is the right one, or make it smaller',
    });
  });

  test('the name to save it under is plain', async () => {
    const { id } = await createBuild('../"Bäch\r\nlein" <5> 🎣');
    const response = await bench.ask('GET', `/api/documents/${id}/file`);
    expect(response.headers.get('content-disposition')).toBe('attachment; filename="Ba-ch-lein-5.json"');
  });
});

describe('revisions', () => {
  const freeze = (id: string) =>
    answered<Revision>(bench.ask('POST', `/api/documents/${id}/revisions`, { engineVersion: '1' }), 201);

  test('the same values give the same revision, a print of it included; other values another', async () => {
    const { id } = await createBuild('Brook');
    const first = await freeze(id);
    await append(id, [operation(5, { path: ['prints', 'p1', 'revision'], value: first.revision })]);
    expect(await freeze(id)).toEqual(first);
    await append(id, [operation(6)]);
    const second = await freeze(id);
    expect(second.revision).not.toBe(first.revision);
    expect(await answered(bench.ask('GET', `/api/documents/${id}/revisions`))).toEqual({
      revisions: [second, first],
    });
    const frozen = await answered(bench.ask('GET', `/api/documents/${id}/revisions/${first.revision}`));
    expect(frozen).toMatchObject({ ...first, values: { 'about/-/title': 'Brook' } });
  });
});

describe('attachments', () => {
  test.each([
    ['a script', '<script>alert(1)</script>'],
    ['an SVG', '<svg xmlns="http://www.w3.org/2000/svg"/>'],
    ['nothing', ''],
  ])('%s is not taken, whatever it says it is', async (_, text) => {
    const bytes = new TextEncoder().encode(text);
    const response = await bench.ask('POST', '/api/attachments', bytes, {
      'content-type': 'application/octet-stream',
    });
    expect(await answered(response, 422)).toMatchObject({ findings: [{ path: 'attachment' }] });
  });

  test('of a picture nothing but the picture is stored: no place, no camera', async () => {
    const photo = new Uint8Array(
      jpeg.encode({ width: 64, height: 48, data: new Uint8Array(64 * 48 * 4) }).data,
    );
    const exif = Buffer.from('\xff\xe1\0\x2cExif\0\0II*\0 Invented Camera GPS 47.1234 N\0\0', 'latin1');
    const told = new Uint8Array(Buffer.concat([photo.subarray(0, 20), exif, photo.subarray(20)]));
    const sent = bench.ask('POST', '/api/attachments', told, { 'content-type': 'application/octet-stream' });
    const { hash, ...size } = await answered<AttachmentAnswer>(sent, 201);
    expect(size).toMatchObject({ widthPx: 64, heightPx: 48, size: photo.length });
    const rows = await bench.db.selectFrom('attachments').selectAll().execute();
    expect(rows).toHaveLength(1);
    expect(Buffer.from(rows[0].bytes).equals(photo)).toBe(true);
    const got = await bench.ask('GET', `/api/attachments/${hash}`);
    expect(Buffer.from(await got.arrayBuffer()).toString('latin1')).not.toMatch(/Invented|GPS|47\.12/);
  });

  test.each([
    ['a HEIC, whose place cannot be taken out here', '\0\0\0\x18ftypheic', /HEIC.*JPEG, PNG or WebP/],
    ['half a JPEG', '\xff\xd8\xff\xe0\0\x10JFIF\0', /broken or cut short/],
  ])('%s is refused with the reason', async (_, text, reason) => {
    const response = await bench.ask(
      'POST',
      '/api/attachments',
      new Uint8Array(Buffer.from(text, 'latin1')),
      {
        'content-type': 'application/octet-stream',
      },
    );
    expect((await answered<{ message: string }>(response, 422)).message).toMatch(reason);
    expect((await bench.counts()).attachments).toBe(0);
  });
});

describe('a copy', () => {
  test("is the builder's own, with the same values", async () => {
    const { id } = await createBuild('Brook');
    await append(id, [operation(5), operation(6, { path: ['about', '-', 'demo'], value: true })]);
    const copy = await answered<DocumentSummary>(bench.ask('POST', `/api/documents/${id}/copy`, {}), 201);
    expect(copy).toMatchObject({ title: 'Brook', demo: false, card: { copyOf: id } });
    expect((await bench.keeper.state(copy.id)).cells.get('sections/s1/name')?.value).toBe('v5');
    expect(await bench.keeper.findOrThrow(id)).toMatchObject({ title: 'Brook', demo: true });
  });
});
