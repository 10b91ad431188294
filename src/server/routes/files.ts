import { Readable } from 'node:stream';
import { Hono } from 'hono';
import type { AttachmentAnswer } from '../../record/api.ts';
import { largestFile } from '../../record/file-shape.ts';
import { bareAttachment } from '../bare-attachment.ts';
import { exportBuild, importBuild } from '../build-files.ts';
import { NotFoundError } from '../errors.ts';
import type { Keeper } from '../keeper.ts';
import { type RecordPlace, shopArchive } from '../shop-files/shop-archive.ts';
import { shopZip } from '../shop-files/write-shop.ts';
import { assertRoom } from '../space-limit.ts';
import type { Works } from '../thread/works.ts';
import { readBytes, readText } from './read-body.ts';

/** Largest picture or scan taken, in bytes. */
const largestAttachment = 64 * 1024 ** 2;

/** Build files out and in, and attachments. */
export function fileRoutes(
  keeper: Keeper,
  version: string,
  record: RecordPlace | undefined,
  works: Works,
): Hono {
  const app = new Hono();
  app.get('/documents/:id/file', async (c) => {
    const { id, title } = await keeper.findOrThrow(c.req.param('id'));
    const attachments = c.req.query('attachments') !== 'no';
    const by = { attachments, writtenBy: `Fairbend ${version}` };
    const text = await works.run('build out', (task) => exportBuild(keeper, id, by, record?.place, task));
    return c.body(text, 200, {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="${fileName(title)}.json"`,
    });
  });
  app.get('/shop/files', async (c) => {
    const by = { writtenBy: `Fairbend ${version}`, madeAt: keeper.timestamp() };
    const pieces = record
      ? await works.run('shop out', (task) => shopArchive(record, by, task), c.req.raw.signal)
      : shopZip(keeper.repository, by);
    return c.body(Readable.toWeb(Readable.from(pieces)) as ReadableStream<Uint8Array>, 200, {
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="fairbend-shop-${by.madeAt.slice(0, 10)}.zip"`,
    });
  });
  app.post('/files', async (c) => {
    const text = await readText(c, largestFile, 'The build file');
    return c.json(await works.run('build in', (task) => importBuild(keeper, text, task)), 201);
  });
  app.post('/attachments', async (c) => {
    const sent = await readBytes(c, largestAttachment, 'The attachment');
    const { hash, bytes, type, size } = bareAttachment(sent);
    await assertRoom(keeper, bytes.length);
    await keeper.repository.addAttachment({ hash, type, bytes }, keeper.timestamp());
    const answer: AttachmentAnswer = { hash, type, size: bytes.length, ...size };
    return c.json(answer, 201);
  });
  app.get('/attachments/:hash', async (c) => {
    const found = await keeper.repository.attachment(c.req.param('hash'));
    if (!found) throw new NotFoundError('There is no such attachment');
    return c.body(new Uint8Array(found.bytes), 200, {
      'content-type': found.type,
      // A viewer of papers does not work where nothing may run; pictures are shown.
      ...(found.type === 'application/pdf' ? { 'content-disposition': 'attachment' } : {}),
      // The name is the content's hash: it can never change.
      'cache-control': 'private, max-age=31536000, immutable',
    });
  });
  return app;
}

/** Letters and digits of the title; plain enough for every file system and header. */
function fileName(title: string): string {
  const plain = title.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
  return plain.replace(/^-+|-+$/g, '').slice(0, 60) || 'build';
}
