import { createHash } from 'node:crypto';
import { Readable } from 'node:stream';
import { Hono } from 'hono';
import { stripPicture } from '../../image/strip/strip-picture.ts';
import type { AttachmentAnswer } from '../../record/api.ts';
import { largestFile } from '../../record/file-shape.ts';
import { sentenceOf } from '../../words/sentence.ts';
import { siWriter } from '../../words/writer.ts';
import { attachmentType } from '../attachment-type.ts';
import { exportBuild, importBuild } from '../build-files.ts';
import { NotFoundError, RefusedError } from '../errors.ts';
import type { Keeper } from '../keeper.ts';
import { shopZip } from '../shop-files/write-shop.ts';
import { readBytes, readText } from './read-body.ts';

/** Largest picture or scan taken, in bytes. */
const largestAttachment = 64 * 1024 ** 2;

/** Build files out and in, and attachments. */
export function fileRoutes(keeper: Keeper, version: string): Hono {
  const app = new Hono();
  app.get('/documents/:id/file', async (c) => {
    const { id, title } = await keeper.findOrThrow(c.req.param('id'));
    const attachments = c.req.query('attachments') !== 'no';
    const text = await exportBuild(keeper, id, { attachments, writtenBy: `Fairbend ${version}` });
    return c.body(text, 200, {
      'content-type': 'application/json; charset=utf-8',
      'content-disposition': `attachment; filename="${fileName(title)}.json"`,
    });
  });
  app.get('/shop/files', (c) => {
    const madeAt = keeper.timestamp();
    const pieces = shopZip(keeper.repository, { writtenBy: `Fairbend ${version}`, madeAt });
    return c.body(Readable.toWeb(Readable.from(pieces)) as ReadableStream<Uint8Array>, 200, {
      'content-type': 'application/zip',
      'content-disposition': `attachment; filename="fairbend-shop-${madeAt.slice(0, 10)}.zip"`,
    });
  });
  app.post('/files', async (c) =>
    c.json(await importBuild(keeper, await readText(c, largestFile, 'The build file')), 201),
  );
  app.post('/attachments', async (c) => {
    const { bytes, type, size } = bareAttachment(await readBytes(c, largestAttachment, 'The attachment'));
    const hash = createHash('sha256').update(bytes).digest('hex');
    await keeper.repository.addAttachment({ hash, type, bytes }, keeper.timestamp());
    const answer: AttachmentAnswer = { hash, type, size: bytes.length, ...size };
    return c.json(answer, 201);
  });
  app.get('/attachments/:hash', async (c) => {
    const found = await keeper.repository.attachment(c.req.param('hash'));
    if (!found) throw new NotFoundError('There is no such attachment');
    return c.body(new Uint8Array(found.bytes), 200, {
      'content-type': found.type,
      // The name is the content's hash: it can never change.
      'cache-control': 'private, max-age=31536000, immutable',
    });
  });
  return app;
}

interface BareAttachment {
  bytes: Uint8Array<ArrayBuffer>;
  type: string;
  /** Of a picture. */
  size?: { widthPx: number; heightPx: number };
}

/** What is kept of the bytes sent: of a picture nothing but the picture. @throws RefusedError */
function bareAttachment(sent: Uint8Array<ArrayBuffer>): BareAttachment {
  const refuse = (message: string) => new RefusedError([{ path: 'attachment', message }]);
  const type = attachmentType(sent);
  if (!type) throw refuse('The attachment is no picture and no PDF. Save it as JPEG, PNG, WebP or PDF');
  if (type === 'application/pdf') return { bytes: sent, type };
  if (!/^image\/(jpeg|png|webp)$/.test(type)) {
    const kind = type.slice(6).toUpperCase();
    throw refuse(
      `Where a ${kind} picture was taken cannot be taken out of it here. Save it as JPEG, PNG or WebP`,
    );
  }
  const stripped = stripPicture(sent);
  if (stripped.status === 'refused') throw refuse(`Not taken: ${sentenceOf(stripped.findings[0], siWriter)}`);
  const { bytes, widthPx, heightPx } = stripped;
  return { bytes, type, size: { widthPx, heightPx } };
}

/** Letters and digits of the title; plain enough for every file system and header. */
function fileName(title: string): string {
  const plain = title.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
  return plain.replace(/^-+|-+$/g, '').slice(0, 60) || 'build';
}
