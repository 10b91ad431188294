import { chmodSync, mkdirSync, readFileSync, rmSync, statfsSync, statSync, writeFileSync } from 'node:fs';
import { homedir } from 'node:os';
import { join, resolve } from 'node:path';
import { DatabaseTrouble, troubleOf } from './database-trouble.ts';
import { type OpenedSqlite, openSqlite } from './sqlite.ts';

/** Where the record is kept unless `--data` or FAIRBEND_DATA says otherwise. */
export function defaultDataFolder(env: NodeJS.ProcessEnv, platform: NodeJS.Platform): string {
  if (env.FAIRBEND_DATA) return resolve(env.FAIRBEND_DATA);
  if (platform === 'win32') return join(env.APPDATA ?? join(homedir(), 'AppData', 'Roaming'), 'Fairbend');
  if (platform === 'darwin') return join(homedir(), 'Library', 'Application Support', 'Fairbend');
  return join(env.XDG_DATA_HOME || join(homedir(), '.local', 'share'), 'fairbend');
}

export interface DataFolder {
  path: string;
  databaseFile: string;
  /** Something the builder should know about the place, though it works. */
  warning?: string;
}

/** Makes the folder where it is missing. @throws DatabaseTrouble when that cannot be done */
export function openDataFolder(path: string): DataFolder {
  try {
    mkdirSync(path, { recursive: true, mode: 0o700 });
    closeToOthers(path);
  } catch (cause) {
    throw new DatabaseTrouble('cannot open', path, (cause as Error).message, { cause });
  }
  const databaseFile = join(path, 'fairbend.sqlite');
  return { path, databaseFile, warning: onNetwork(path) ? networkWarning(path) : undefined };
}

/** It names customers: other accounts of this computer have no business in it. Windows keeps its own lists. */
function closeToOthers(path: string): void {
  const { mode, uid } = statSync(path);
  if (uid === process.getuid?.() && (mode & 0o077) !== 0) chmodSync(path, mode & 0o700);
}

function networkWarning(path: string): string {
  return (
    `The data folder ${path} lies on a network share, where SQLite files can be damaged. ` +
    'Keep it on a disk of this computer (--data FOLDER) and open the page from the other computers instead.'
  );
}

/** File system types of NFS, SMB, SMB2 and CIFS as Linux numbers them (linux/magic.h). */
const networkFileSystems = new Set([0x6969, 0x517b, 0xfe534d42, 0xff534d42]);

function onNetwork(path: string): boolean {
  return process.platform === 'linux' && networkFileSystems.has(statfsSync(path).type >>> 0);
}

/** The one server of a data folder, as it says itself. */
export interface ServerNote {
  address: string;
  pid: number;
}

export interface FolderLock {
  /** Leaves the address for whoever starts a second server. */
  note(note: ServerNote): void;
  release(): void;
  /** As release, and leaves the note of another server there. */
  giveUp(): void;
}

/**
 * Takes the folder for this process; undefined when another server has it. The lock is one of the operating
 * system on a small SQLite file: it ends with the process, however that ends. @throws DatabaseTrouble
 */
export function lockFolder(folder: string): FolderLock | undefined {
  const noteFile = join(folder, 'server.json');
  const database = lockedDatabase(join(folder, 'server-lock.sqlite'));
  if (!database) return undefined;
  const giveUp = () => {
    database.exec('ROLLBACK');
    database.close();
  };
  return {
    note: (note) => writeFileSync(noteFile, `${JSON.stringify(note)}\n`),
    release() {
      rmSync(noteFile, { force: true });
      giveUp();
    },
    giveUp,
  };
}

/** Undefined while another process holds it. @throws DatabaseTrouble where the folder does not let it be made */
function lockedDatabase(file: string): OpenedSqlite['database'] | undefined {
  let database: OpenedSqlite['database'] | undefined;
  try {
    database = openSqlite(file).database;
    database.exec('PRAGMA busy_timeout=0');
    database.exec('PRAGMA locking_mode=EXCLUSIVE');
    database.exec('BEGIN EXCLUSIVE');
    return database;
  } catch (error) {
    database?.close();
    const trouble = troubleOf(error, file);
    if (trouble?.kind === 'busy') return undefined;
    throw trouble ?? error;
  }
}

/** What the server that has the folder left there. */
export function readServerNote(folder: string): ServerNote | undefined {
  try {
    return JSON.parse(readFileSync(join(folder, 'server.json'), 'utf8')) as ServerNote;
  } catch {
    return undefined;
  }
}
