import { createHash } from 'node:crypto';
import { Hono } from 'hono';
import type { AttachmentAnswer } from '../../record/api.ts';
import { largestFile } from '../../record/file-shape.ts';
import { attachmentType } from '../attachment-type.ts';
import { exportBuild, importBuild } from '../build-files.ts';
import { NotFoundError, RefusedError } from '../errors.ts';
import type { Keeper } from '../keeper.ts';
import { readBytes, readText } from './read-body.ts';

/** Largest picture or scan taken, in bytes. */
const largestAttachment = 25 * 1024 ** 2;

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
  app.post('/files', async (c) =>
    c.json(await importBuild(keeper, await readText(c, largestFile, 'The build file')), 201),
  );
  app.post('/attachments', async (c) => {
    const bytes = await readBytes(c, largestAttachment, 'The attachment');
    const type = attachmentType(bytes);
    if (!type) {
      const message =
        'The attachment is no picture and no PDF. Save it as JPEG, PNG, WebP, HEIC, TIFF or PDF';
      throw new RefusedError([{ path: 'attachment', message }]);
    }
    const hash = createHash('sha256').update(bytes).digest('hex');
    await keeper.repository.addAttachment({ hash, type, bytes }, keeper.timestamp());
    const answer: AttachmentAnswer = { hash, type, size: bytes.length };
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

/** Letters and digits of the title; plain enough for every file system and header. */
function fileName(title: string): string {
  const plain = title.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
  return plain.replace(/^-+|-+$/g, '').slice(0, 60) || 'build';
}
