import { createReadStream, statSync } from 'node:fs';
import { Readable } from 'node:stream';
import { Hono } from 'hono';
import { BackupRefused } from '../backup/archive.ts';
import type { Backups } from '../backup/backups.ts';
import type { Restored } from '../backup/restore-backup.ts';
import { ConflictError, NotFoundError, RefusedError } from '../errors.ts';
import { copiedOtherwise } from '../vouch/copy-record.ts';

/** Other server processes may be writing there: a whole record is not swapped under them. */
const intoServer = (file: string) =>
  `A whole backup goes into an empty PostgreSQL database, by two commands: npm run fairbend -- restore ${JSON.stringify(file)} --data NEW-FOLDER, then npm run fairbend -- move --from NEW-FOLDER --to postgres://…`;

/** The backups of the data folder: list, one more, each as a file to take away or in the place of the record. */
export function backupRoutes(
  backups: Backups | undefined,
  restore: ((file: string) => Promise<Restored>) | undefined,
): Hono {
  const app = new Hono();
  const orNone = () => {
    if (backups) return backups;
    throw new NotFoundError('This server keeps no backups');
  };
  app.get('/backups', (c) => c.json({ backups: orNone().list() }));
  app.post('/backups', async (c) => c.json(await orNone().make(true), 201));
  app.get('/backups/:name', (c) => {
    const file = orNone().fileOf(c.req.param('name'));
    if (!file) throw new NotFoundError('There is no such backup. Load the page again');
    return c.body(Readable.toWeb(createReadStream(file)) as ReadableStream, 200, {
      'content-type': 'application/zip',
      'content-length': String(statSync(file).size),
      'content-disposition': `attachment; filename="${c.req.param('name')}"`,
    });
  });
  app.post('/backups/:name/restore', async (c) => {
    const file = orNone().fileOf(c.req.param('name'));
    if (!file) throw new NotFoundError('There is no such backup. Load the page again');
    if (!restore) throw new ConflictError(intoServer(file));
    const { keptAs, manifest, copied } = await restore(file).catch((error: Error) => {
      if (!(error instanceof BackupRefused)) throw error;
      throw new RefusedError([{ path: 'backup', message: error.message }]);
    });
    return c.json({ madeAt: manifest.madeAt, keptAs: keptAs ?? null, otherwise: copiedOtherwise(copied) });
  });
  return app;
}
