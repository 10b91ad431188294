import { readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAdaptorServer } from '@hono/node-server';
import type { Hono } from 'hono';
import { type AppParts, createApp } from './app.ts';
import { Backups } from './backup/backups.ts';
import { restoreInto } from './backup/restore-backup.ts';
import { openOrRepair, undoHalfDone } from './care/at-start.ts';
import { RecordCare } from './care/record-care.ts';
import { type DataFolder, type FolderLock, lockFolder, openDataFolder } from './data-folder.ts';
import { demoId } from './keeper.ts';
import { closeServer, firstPort, listen } from './listen.ts';
import { backupsFolder, type OpenRecord, openRecord } from './open-record.ts';
import { RecordHolder } from './record-holder.ts';
import { findRunningServer, serverThatAnswers } from './running-server.ts';
import { Entrance } from './sharing/entrance.ts';
import { PhoneDoor } from './sharing/phone-door.ts';
import { ShopImport } from './shop-files/shop-import.ts';
import { readStaticFiles } from './static-files.ts';
import { Works } from './thread/works.ts';

export interface ServeOptions {
  dataFolder: string;
  /** Exactly this port; without it 4870, or the next free one. */
  port?: number;
  /** Address to listen on; only this computer unless said otherwise. */
  host?: string;
  /** postgres:// address; without it the SQLite file of the data folder. */
  databaseUrl?: string;
  /** Lets paired devices of the network in. */
  share?: boolean;
  /** Shared by https alone, with a certificate of the shop's own; this computer goes on by plain http. */
  tls?: boolean;
  /** Exactly this port for https; without it 4970, or the next free one. */
  tlsPort?: number;
  /** Origin of a TLS proxy on this computer that passes its requests on, such as https://rods.example. */
  proxyOrigin?: string;
  /** Ends the program when its page asks; without it the page cannot. */
  end?(): void;
  /** Makes a backup at the start and every day, in the data folder. */
  dailyBackups?: boolean;
}

export interface RunningServer {
  address: string;
  dataFolder: string;
  /** Where https is spoken; undefined without a certificate of the shop's own. */
  tlsPort?: number;
  /** Another process serves this data folder already, at `address`; this one started nothing. */
  alreadyRunning: boolean;
  warnings: string[];
  /** A first pairing code and where it is typed in; undefined when not shared. */
  pairing?: { code: string; addresses: string[]; fingerprint?: string };
  close(): Promise<void>;
}

/** The package's own folder, from src/server as from dist/server. */
const packageRoot = fileURLToPath(new URL('../../', import.meta.url));

/**
 * Starts the server, or finds the one that serves this data folder.
 * @throws DatabaseTrouble, PortTaken, FolderHeld, each in words for the builder
 */
export async function serve(options: ServeOptions): Promise<RunningServer> {
  const folder = openDataFolder(options.dataFolder);
  const lock = lockFolder(folder.path);
  // The lock's file may have been deleted under the server that holds it: whoever answers there is that server.
  const standing = lock && (await serverThatAnswers(folder.path));
  if (lock && !standing) return start(options, folder, lock);
  lock?.giveUp();
  const address = standing ?? (await findRunningServer(folder.path));
  const close = async () => undefined;
  return { address, dataFolder: folder.path, alreadyRunning: true, warnings: [], close };
}

async function start(options: ServeOptions, folder: DataFolder, lock: FolderLock): Promise<RunningServer> {
  const listening: Server[] = [];
  const works = new Works();
  const { databaseUrl } = options;
  const backups = keepBackups(folder, works, databaseUrl);
  const ends = [async () => backups?.close()];
  let holder: RecordHolder | undefined;
  const close = async () => {
    holder?.endFeeds();
    await Promise.all(listening.map(closeServer));
    for (const end of ends) await end();
    await holder?.close();
    lock.release();
  };
  try {
    const entrance = new Entrance(options, folder.path);
    const fetch: RecordHolder['fetch'] = (request, env) => holder!.fetch(request, env);
    const { host, tlsPort: port } = options;
    const door = new PhoneDoor({ entrance, folder: folder.path, fetch, host, port });
    ends.push(() => door.turn(false));
    const demoFile = join(packageRoot, 'examples', 'demo-build.json');
    const halfDone = databaseUrl ? [] : undoHalfDone(folder);
    const opened = () => openRecord(folder, databaseUrl, demoFile);
    const open = () => (databaseUrl ? opened() : openOrRepair(folder, backups, opened));
    const swapped = (swap: () => string | undefined) => holder!.replace(swap);
    const restoreFile = (file: string) =>
      works.run('restore', (task) => restoreInto(file, folder, new Date(), swapped, task));
    const restore = databaseUrl ? undefined : restoreFile;
    const shopImport = databaseUrl
      ? undefined
      : new ShopImport({
          folder,
          repository: () => holder!.record.keeper.repository,
          replace: (swap) => holder!.replace(swap),
          now: () => new Date(),
          works,
        });
    const care = new RecordCare({
      folder,
      record: () => holder!.record,
      backups,
      address: databaseUrl,
      replace: swapped,
      now: () => new Date(),
      works,
    });
    ends.push(() => care.close());
    const place = { place: databaseUrl ?? folder.databaseFile, folder: folder.path };
    const { end } = options;
    const info = { version: packageVersion(), dataFolder: folder.path, mayEnd: end !== undefined };
    const staticFiles = readStaticFiles(join(packageRoot, 'dist', 'web'));
    holder = await RecordHolder.start(open, (record, closing) =>
      appOn(record, {
        entrance,
        letIn: (opened) => door.leave(opened),
        backups,
        restore,
        shopImport,
        care,
        works,
        record: place,
        demoFile,
        staticFiles,
        closing,
        end,
        own: info,
      }),
    );
    const server = createAdaptorServer({ fetch }) as Server;
    listening.push(server);
    entrance.ports.plain = await listen(server, entrance.host, options.port, firstPort);
    const closed = options.share ? [] : await openAsLeft(door);
    if (options.share && options.tls) await door.turn(true);
    const address = addressOf(entrance.host, entrance.ports.plain);
    lock.note({ address, pid: process.pid });
    if (options.dailyBackups) {
      backups?.start((error) => console.error(`No backup was made: ${error.message}`));
      care.start();
    }
    const pairing = options.share
      ? {
          code: (await (holder.record.pairing ?? entrance.pairing).makeCode()).code,
          addresses: entrance.addresses(),
          fingerprint: entrance.certificate?.fingerprint,
        }
      : undefined;
    const warnings = [...halfDone, ...closed, ...holder.record.warnings, ...(await besideWarnings(care))];
    const tlsPort = entrance.certificate && entrance.ports.tls;
    return { address, dataFolder: folder.path, tlsPort, alreadyRunning: false, warnings, pairing, close };
  } catch (error) {
    await close();
    throw error;
  }
}

interface AppSurroundings
  extends Omit<AppParts, 'keeper' | 'jobs' | 'version' | 'info' | 'sharing' | 'allowedHost' | 'proxyOrigin'> {
  own: { version: string; dataFolder: string; mayEnd: boolean };
  entrance: Entrance;
  letIn(open: boolean): Promise<void>;
}

function appOn(
  { keeper, jobs, sessions, pairing: shared, description }: OpenRecord,
  around: AppSurroundings,
): Hono {
  const { own, entrance, letIn, ...parts } = around;
  const { allowedHost, proxyOrigin } = entrance;
  return createApp({
    ...parts,
    version: own.version,
    keeper,
    jobs,
    info: async () => ({
      app: 'fairbend',
      record: await keeper.repository.identity(),
      ...own,
      database: description,
      demo: (await keeper.repository.find(demoId)) ? demoId : null,
    }),
    allowedHost,
    proxyOrigin,
    sharing: { entrance, pairing: shared ?? entrance.pairing, sessions, letIn },
  });
}

/** As the switch was left; where that cannot be, everything else goes on. */
async function openAsLeft(door: PhoneDoor): Promise<string[]> {
  if (!door.leftOpen) return [];
  try {
    await door.turn(true);
    return [];
  } catch (error) {
    return [`No phones are let in: ${(error as Error).message}`];
  }
}

/** A new shop beside backups of another may be the wrong folder, or a mishap. */
async function besideWarnings(care: RecordCare): Promise<string[]> {
  const { found } = await care.standing();
  if (!found) return [];
  return [
    `This record is empty, but a backup of ${found.madeAt} with ${found.builds} builds lies beside it. Bring it back on the shelf, or in Settings, Backups`,
  ];
}

function addressOf(host: string, port: number): string {
  const local = host === '0.0.0.0' ? '127.0.0.1' : host;
  return `http://${local.includes(':') ? `[${local}]` : local}:${port}`;
}

function keepBackups(folder: DataFolder, works: Works, address: string | undefined): Backups {
  const writtenBy = `Fairbend ${packageVersion()}`;
  const { databaseFile } = folder;
  return new Backups({
    databaseFile,
    address,
    folder: backupsFolder(folder),
    writtenBy,
    now: () => new Date(),
    works,
  });
}

export function packageVersion(): string {
  const text = readFileSync(join(packageRoot, 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
