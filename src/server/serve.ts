import { readFileSync } from 'node:fs';
import type { Server } from 'node:http';
import { join } from 'node:path';
import { fileURLToPath } from 'node:url';
import { createAdaptorServer } from '@hono/node-server';
import { createApp } from './app.ts';
import { ChangeFeed } from './change-feed.ts';
import { lockFolder, openDataFolder, readServerNote } from './data-folder.ts';
import { openDatabase } from './database.ts';
import { Keeper } from './keeper.ts';
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
}

export interface RunningServer {
  address: string;
  dataFolder: string;
  /** Another process serves this data folder already, at `address`; this one started nothing. */
  alreadyRunning: boolean;
  warnings: string[];
  close(): Promise<void>;
}

/** The package's own folder, from src/server as from dist/server. */
export const packageRoot = fileURLToPath(new URL('../../', import.meta.url));

const firstPort = 4870;
const portsTried = 50;

/** Starts the server, or finds the one that serves this data folder. @throws DatabaseTrouble, PortTaken */
export async function serve(options: ServeOptions): Promise<RunningServer> {
  const folder = openDataFolder(options.dataFolder);
  const lock = lockFolder(folder.path);
  if (!lock) return findRunning(folder.path);
  try {
    const { db, description } = await openDatabase(options.databaseUrl ?? folder.databaseFile);
    const keeper = new Keeper(new SqlRepository(db), new ChangeFeed());
    const closing = new AbortController();
    const host = options.host ?? '127.0.0.1';
    let port = 0;
    const app = createApp({
      keeper,
      staticFiles: readStaticFiles(join(packageRoot, 'dist', 'web')),
      info: () => ({
        app: 'fairbend',
        version: packageVersion(),
        dataFolder: folder.path,
        database: description,
        demo: null,
      }),
      allowedHost: (name) => ownNames(host).some((own) => name === `${own}:${port}`),
      closing: closing.signal,
    });
    const server = createAdaptorServer({ fetch: app.fetch }) as Server;
    port = await listen(server, host, options.port);
    const address = `http://${host.includes(':') ? `[${host}]` : host}:${port}`;
    lock.note({ address, pid: process.pid });
    return {
      address,
      dataFolder: folder.path,
      alreadyRunning: false,
      warnings: folder.warning ? [folder.warning] : [],
      async close() {
        closing.abort();
        await closeServer(server);
        await keeper.repository.close();
        lock.release();
      },
    };
  } catch (error) {
    lock.release();
    throw error;
  }
}

/** The wanted port is in use. */
export class PortTaken extends Error {}

async function listen(server: Server, host: string, wanted: number | undefined): Promise<number> {
  const ports =
    wanted === undefined ? Array.from({ length: portsTried }, (_, step) => firstPort + step) : [wanted];
  for (const port of ports) {
    const listening = await tryPort(server, host, port);
    if (listening !== undefined) return listening;
  }
  throw new PortTaken(
    `Port ${wanted ?? `${firstPort} and the ${portsTried - 1} after it`} of ${host} in use by another program. Choose another with --port`,
  );
}

/** The port listened on (0 asks the system for any); undefined when it is taken. */
function tryPort(server: Server, host: string, port: number): Promise<number | undefined> {
  return new Promise((resolve, reject) => {
    const failed = (error: NodeJS.ErrnoException) =>
      error.code === 'EADDRINUSE' ? resolve(undefined) : reject(error);
    server.once('error', failed);
    server.listen(port, host, () => {
      server.off('error', failed);
      const at = server.address();
      resolve(typeof at === 'object' && at ? at.port : port);
    });
  });
}

function ownNames(host: string): string[] {
  const names = ['127.0.0.1', 'localhost', '[::1]'];
  return names.includes(host) ? names : [...names, host];
}

function closeServer(server: Server): Promise<void> {
  return new Promise((resolve) => {
    server.close(() => resolve());
    server.closeIdleConnections();
    // Requests on their way may finish; a stream or a connection kept open may not keep the server.
    setTimeout(() => server.closeAllConnections(), 300).unref();
  });
}

/** The other server may be starting at this moment: its note is waited for. */
async function findRunning(folder: string): Promise<RunningServer> {
  for (let tries = 0; tries < 50; tries++) {
    const note = readServerNote(folder);
    if (note && (await answers(note.address))) {
      return {
        address: note.address,
        dataFolder: folder,
        alreadyRunning: true,
        warnings: [],
        close: async () => undefined,
      };
    }
    await new Promise((resolve) => setTimeout(resolve, 100));
  }
  throw new Error(
    `Another program holds the data folder ${folder} and does not answer. End it, or start with another data folder (--data FOLDER)`,
  );
}

async function answers(address: string): Promise<boolean> {
  try {
    const response = await fetch(`${address}/api/info`, { signal: AbortSignal.timeout(2000) });
    return ((await response.json()) as { app?: string }).app === 'fairbend';
  } catch {
    return false;
  }
}

export function packageVersion(): string {
  const file = join(packageRoot, 'package.json');
  return (JSON.parse(readFileSync(file, 'utf8')) as { version: string }).version;
}
