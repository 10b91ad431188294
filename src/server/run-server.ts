import { spawn } from 'node:child_process';
import { resolve } from 'node:path';
import { renderUnicodeCompact } from 'uqr';
import { defaultDataFolder } from './data-folder.ts';
import { DatabaseTrouble } from './database-trouble.ts';
import { PortTaken } from './listen.ts';
import { FolderHeld } from './running-server.ts';
import { type RunningServer, serve } from './serve.ts';

export interface RunOptions {
  /** Data folder; otherwise FAIRBEND_DATA or the platform's usual place. */
  data?: string;
  /** As given by a person; otherwise 4870 or the next free one. */
  port?: string;
  host?: string;
  /** Let paired devices of the network in. */
  share?: boolean;
  /** Shared by https, with a certificate of the shop's own. */
  tls?: boolean;
  /** Origin of a TLS proxy in front. */
  behind?: string;
  /** Open a browser where there is a desktop. */
  open?: boolean;
  /** The page may end the program; not where a service manager keeps it running. */
  endable?: boolean;
}

/** Serves until Ctrl-C; answers the exit code. What goes wrong is said on standard error. */
export async function runServer(options: RunOptions): Promise<number> {
  const port = portOf(options.port);
  if (typeof port === 'string') return fail(port);
  if (options.behind !== undefined && !/^https?:\/\/[^/]+$/.test(options.behind))
    return fail(`"${options.behind}" is no origin. Give scheme and name alone, such as https://rods.example`);
  if (options.tls && (!options.share || options.behind !== undefined))
    return fail('--tls goes with --share, and not with --behind, where the proxy holds the certificate');
  // What is written from here on is for this account alone.
  process.umask(0o077);
  const dataFolder = options.data ? resolve(options.data) : defaultDataFolder(process.env, process.platform);
  const ended = endAsked();
  let server: RunningServer;
  try {
    server = await serve({
      dataFolder,
      port,
      host: options.host,
      databaseUrl: process.env.DATABASE_URL,
      share: options.share || options.behind !== undefined,
      tls: options.tls,
      end: options.endable ? ended.ask : undefined,
      proxyOrigin: options.behind?.toLowerCase(),
      dailyBackups: true,
    });
  } catch (error) {
    const explained = [DatabaseTrouble, PortTaken, FolderHeld].some((kind) => error instanceof kind);
    if (explained) return fail((error as Error).message);
    throw error;
  }
  for (const warning of server.warnings) console.error(`Warning: ${warning}`);
  console.log(`\n  Fairbend${server.alreadyRunning ? ' runs already' : ''}: ${server.address}`);
  console.log(`  Data folder: ${server.dataFolder}`);
  if (server.pairing) sayPairing(server.pairing);
  if (options.open && hasDesktop()) openBrowser(server.address);
  if (server.alreadyRunning) return 0;
  console.log(`  Ctrl-C${options.endable ? ', or the page (Settings),' : ''} ends it.\n`);
  await ended.asked();
  const inTime = await endsInTime(server.close());
  console.log(`Fairbend has ended; ${inTime ? 'everything' : 'what the database acknowledged'} is saved.`);
  return 0;
}

/** Connections that nobody answers would keep the process for minutes; for the program itself, after `runServer`. */
export function endSoon(): void {
  setTimeout(() => process.exit(), 500).unref();
}

/** A system that ends its services kills what takes much longer. */
const longestEndMs = 4000;

function endsInTime(closed: Promise<void>): Promise<boolean> {
  return new Promise((resolve) => {
    const timer = setTimeout(() => resolve(false), longestEndMs);
    closed.then(
      () => {
        clearTimeout(timer);
        resolve(true);
      },
      () => resolve(false),
    );
  });
}

/** The code stands behind '#', which browsers do not send to any server. */
function sayPairing({ code, addresses, fingerprint }: NonNullable<RunningServer['pairing']>): void {
  const [first] = addresses;
  if (!first) {
    console.log(
      '  Shared, but no other computer reaches it: it is in no network, or listens on 127.0.0.1 alone.',
    );
    return;
  }
  console.log(`  Shared as ${addresses.join(', ')}; pairing code ${code} (ten minutes, one device).`);
  if (fingerprint) {
    console.log(
      '  The phone warns that nobody vouches for this shop. Let it show the certificate, and go on only',
    );
    console.log(`  where its SHA-256 fingerprint is\n    ${fingerprint}\n`);
  } else console.log('  Anyone on the network could read what passes: see docs/security.md, or add --tls.\n');
  console.log(renderUnicodeCompact(`${first}/pair#${code}`, { border: 2 }));
}

/** The port as a number, undefined where none was given, or what is wrong with it. */
function portOf(text: string | undefined): number | undefined | string {
  if (text === undefined || text === '') return undefined;
  const port = Number(text);
  if (/^\d+$/.test(text) && port <= 65_535) return port;
  return `Port "${text}" is no port. Give a whole number from 1 to 65535, or none for the usual one`;
}

function fail(message: string): number {
  console.error(message);
  return 1;
}

/** By a signal, from when it is awaited, or by the page. A second Ctrl-C ends at once, as always. */
function endAsked(): { asked(): Promise<void>; ask(): void } {
  const page = new AbortController();
  const asked = () =>
    new Promise<void>((resolve) => {
      page.signal.addEventListener('abort', () => resolve());
      for (const signal of ['SIGINT', 'SIGTERM', 'SIGHUP'] as const) process.once(signal, () => resolve());
    });
  return { asked, ask: () => page.abort() };
}

function hasDesktop(): boolean {
  if (process.env.CI) return false;
  if (process.platform !== 'linux') return true;
  return Boolean(process.env.DISPLAY || process.env.WAYLAND_DISPLAY);
}

/** Whether it works or not, the address stands in the terminal. */
function openBrowser(address: string): void {
  const [command, ...parameters] =
    process.platform === 'win32'
      ? ['cmd', '/c', 'start', '', address]
      : [process.platform === 'darwin' ? 'open' : 'xdg-open', address];
  spawn(command, parameters, { stdio: 'ignore', detached: true })
    .on('error', () => undefined)
    .unref();
}
