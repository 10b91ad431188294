import { readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAdaptorServer } from '@hono/node-server';
import type { ServerInfo } from '../record/api.ts';
import { createApp } from './app.ts';
import { Backups } from './backup/backups.ts';
import { ChangeFeed } from './change-feed.ts';
import { type DataFolder, type FolderLock, lockFolder, openDataFolder } from './data-folder.ts';
import { openDatabase } from './database.ts';
import { demoId, plantDemo } from './demo.ts';
import { Keeper } from './keeper.ts';
import { closeServer, listen } from './listen.ts';
import { findRunningServer } from './running-server.ts';
import { lanAddresses, ownNames } from './sharing/own-names.ts';
import { Pairing } from './sharing/pairing.ts';
import { Sessions } from './sharing/sessions.ts';
import { SqlRepository } from './sql-repository.ts';
import { readStaticFiles } from './static-files.ts';

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
  /** Origin of a TLS proxy on this computer that passes its requests on, such as https://rods.example. */
  proxyOrigin?: string;
  /** Makes a backup at the start and every day, in the data folder. */
  dailyBackups?: boolean;
}

export interface RunningServer {
  address: string;
  dataFolder: string;
  /** Another process serves this data folder already, at `address`; this one started nothing. */
  alreadyRunning: boolean;
  warnings: string[];
  /** A first pairing code and where it is typed in; undefined when not shared. */
  pairing?: { code: string; addresses: string[] };
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
  if (lock) return start(options, folder, lock);
  const address = await findRunningServer(folder.path);
  const close = async () => undefined;
  return { address, dataFolder: folder.path, alreadyRunning: true, warnings: [], close };
}

async function start(options: ServeOptions, folder: DataFolder, lock: FolderLock): Promise<RunningServer> {
  const host = options.host ?? (options.share && !options.proxyOrigin ? '0.0.0.0' : '127.0.0.1');
  const demoFile = join(packageRoot, 'examples', 'demo-build.json');
  const closing = new AbortController();
  let keeper: Keeper | undefined;
  const backups = options.databaseUrl ? undefined : keepBackups(folder);
  try {
    const { db, description } = await openDatabase(options.databaseUrl ?? folder.databaseFile);
    keeper = new Keeper(new SqlRepository(db), new ChangeFeed());
    const warnings = folder.warning ? [folder.warning] : [];
    await plantDemo(keeper, demoFile).catch((error: Error) => warnings.push(`No demo: ${error.message}`));
    const info = await serverInfo(keeper, folder.path, description);
    let port = 0;
    const addresses = () =>
      options.proxyOrigin ? [options.proxyOrigin] : lanAddresses().map((name) => `http://${name}:${port}`);
    const now = () => new Date();
    const sharing = options.share
      ? {
          pairing: new Pairing(now),
          sessions: new Sessions(folder.path, now),
          addresses,
          secure: options.proxyOrigin?.startsWith('https:') ?? false,
        }
      : undefined;
    const app = createApp({
      keeper,
      backups,
      demoFile,
      staticFiles: readStaticFiles(join(packageRoot, 'dist', 'web')),
      info: () => info,
      allowedHost: (name) => ownNames(host, options.share ?? false).some((own) => name === `${own}:${port}`),
      proxyOrigin: options.proxyOrigin,
      sharing,
      closing: closing.signal,
    });
    const server = createAdaptorServer({ fetch: app.fetch }) as Server;
    port = await listen(server, host, options.port);
    const local = host === '0.0.0.0' ? '127.0.0.1' : host;
    const address = `http://${local.includes(':') ? `[${local}]` : local}:${port}`;
    lock.note({ address, pid: process.pid });
    if (options.dailyBackups)
      backups?.start((error) => console.error(`No backup was made: ${error.message}`));
    const pairing = sharing && { code: sharing.pairing.makeCode().code, addresses: addresses() };
    const close = async () => {
      closing.abort();
      await closeServer(server);
      await backups?.close();
      await keeper?.repository.close();
      lock.release();
    };
    return { address, dataFolder: folder.path, alreadyRunning: false, warnings, pairing, close };
  } catch (error) {
    await keeper?.repository.close();
    lock.release();
    throw error;
  }
}

function keepBackups({ path, databaseFile }: DataFolder): Backups {
  const writtenBy = `Fairbend ${packageVersion()}`;
  return new Backups({ databaseFile, folder: join(path, 'backups'), writtenBy, now: () => new Date() });
}

async function serverInfo(keeper: Keeper, dataFolder: string, database: string): Promise<ServerInfo> {
  const demo = (await keeper.repository.find(demoId)) ? demoId : null;
  const record = await keeper.repository.identity();
  return { app: 'fairbend', record, version: packageVersion(), dataFolder, database, demo };
}

export function packageVersion(): string {
  const text = readFileSync(join(packageRoot, 'package.json'), 'utf8');
  return (JSON.parse(text) as { version: string }).version;
}
