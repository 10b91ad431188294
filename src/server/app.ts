import { Hono } from 'hono';
import { compress } from 'hono/compress';
import type { ServerInfo } from '../record/api.ts';
import { answerError } from './answer-error.ts';
import type { Backups } from './backup/backups.ts';
import type { Restored } from './backup/restore-backup.ts';
import type { RecordCare } from './care/record-care.ts';
import { demosOffered, resetDemo, showDemo } from './demo.ts';
import { guardRequests, inertHeaders, secureHeaders } from './guard.ts';
import type { Jobs } from './jobs/jobs.ts';
import type { Keeper } from './keeper.ts';
import { backupRoutes } from './routes/backups.ts';
import { documentRoutes } from './routes/documents.ts';
import { endingRoutes } from './routes/ending.ts';
import { eventRoutes } from './routes/events.ts';
import { fileRoutes } from './routes/files.ts';
import { jobRoutes } from './routes/jobs.ts';
import { proofRoutes } from './routes/proofs.ts';
import { recordRoutes } from './routes/record.ts';
import { type Sharing, sharingRoutes } from './routes/sharing.ts';
import { shopImportRoutes } from './routes/shop-import.ts';
import { workRoutes } from './routes/works.ts';
import { admit } from './sharing/admit.ts';
import { boundStrangers, type StrangerBounds, usualBounds } from './sharing/stranger-bounds.ts';
import type { RecordPlace } from './shop-files/shop-archive.ts';
import type { ShopImport } from './shop-files/shop-import.ts';
import type { StaticFiles } from './static-files.ts';
import { Works } from './thread/works.ts';

export interface AppParts {
  keeper: Keeper;
  /** The built page; undefined where only the API is served. */
  staticFiles?: StaticFiles;
  /** Of this program. */
  version: string;
  info(): ServerInfo | Promise<ServerInfo>;
  /** Where threads find the record; undefined where it is in no file and on no server. */
  record?: RecordPlace;
  /** Undefined where the server keeps none itself. */
  backups?: Backups;
  /** Puts the backup in this file in the place of the record. */
  restore?(file: string): Promise<Restored>;
  /** Takes a whole shop in; undefined where the record cannot be replaced under the server. */
  shopImport?: ShopImport;
  /** Undefined where nobody looks after the record (tests of the routes alone). */
  care?: RecordCare;
  jobs: Jobs;
  /** Long work that outlives an app, such as a restore; without it this app's alone. */
  works?: Works;
  /** Build file of the demo; it need not exist. */
  demoFile: string;
  /** Whether a Host header names this server. */
  allowedHost(host: string): boolean;
  /** The one origin of a proxy in front of this server, such as https://rods.example. */
  proxyOrigin?: string;
  /** Undefined where only this computer is ever let in. */
  sharing?: Sharing;
  /** Ends the program; undefined where something else starts and ends it. */
  end?(): void;
  strangerBounds?: StrangerBounds;
  /** Ends open event streams when the server closes. */
  closing: AbortSignal;
}

/** The whole server as one function from request to response; no socket, no clock of its own. */
export function createApp(parts: AppParts): Hono {
  const app = new Hono();
  app.onError((error, c) => answerError(error, c));
  // What is asked for may be long; what is sent is acknowledged in a few words, not worth a compressor each.
  app.get('*', compress());
  for (const path of ['/api/attachments/*', '/api/backups/*', '/api/documents/:id/file', '/api/shop/files'])
    app.get(path, inertHeaders());
  app.use(secureHeaders());
  app.use(guardRequests(parts.allowedHost, parts.proxyOrigin));
  app.use('/api/pair', boundStrangers(parts.strangerBounds ?? usualBounds));
  app.use(admit(parts.sharing));
  app.route('/api', sharingRoutes(parts.sharing));
  app.get('/api/info', async (c) => c.json(await parts.info()));
  app.route('/api', documentRoutes(parts.keeper));
  const works = parts.works ?? new Works();
  app.route('/api', fileRoutes(parts.keeper, parts.version, parts.record, works));
  app.route('/api', workRoutes(works));
  app.route('/api', backupRoutes(parts.backups, parts.restore));
  app.route('/api', shopImportRoutes(parts.shopImport));
  app.route('/api', recordRoutes(parts.care));
  app.route('/api', proofRoutes(parts.keeper));
  app.route('/api', jobRoutes(parts.jobs));
  app.post('/api/demo/reset', async (c) => c.json(await resetDemo(parts.keeper, parts.demoFile)));
  app.get('/api/demos', async (c) => c.json({ demos: await demosOffered(parts.keeper, parts.demoFile) }));
  app.post('/api/demos/:id', async (c) =>
    c.json(await showDemo(parts.keeper, parts.demoFile, c.req.param('id'))),
  );
  app.route('/api', endingRoutes(parts.end));
  app.route('/api', eventRoutes(parts.keeper, parts.closing));
  app.all('/api/*', (c) => c.json({ message: `There is no ${c.req.path} here`, findings: [] }, 404));
  app.get('*', (c) => parts.staticFiles?.answer(c.req.path) ?? c.text(pageNotBuilt, 404));
  app.all('*', (c) => c.json({ message: 'Only GET is answered here', findings: [] }, 405));
  return app;
}

const pageNotBuilt = 'The page has not been built. Stop this server and run "npm start".\n';
