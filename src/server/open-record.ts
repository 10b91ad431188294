import { join } from 'node:path';
import { type Kysely, sql } from 'kysely';
import { ChangeFeed } from './change-feed.ts';
import type { DataFolder } from './data-folder.ts';
import { openDatabase } from './database.ts';
import { isServer, troubleOf } from './database-trouble.ts';
import { plantDemo } from './demo.ts';
import { FileRepository } from './file-repository.ts';
import { JobStore } from './jobs/job-store.ts';
import type { Jobs } from './jobs/jobs.ts';
import { LocalJobs } from './jobs/local-jobs.ts';
import { Keeper } from './keeper.ts';
import { FileSessions } from './sharing/file-sessions.ts';
import type { PairingCodes } from './sharing/pairing.ts';
import type { Sessions } from './sharing/sessions.ts';
import { SqlPairing } from './sharing/sql-pairing.ts';
import { SqlSessions } from './sharing/sql-sessions.ts';
import { removeArriving } from './sql-create.ts';
import type { Tables } from './tables.ts';

/** All that stands on one open database; a restore closes it and opens the next. */
export interface OpenRecord {
  keeper: Keeper;
  jobs: Jobs;
  sessions: Sessions;
  /** Where pairing codes are shared with other server processes; undefined where this is the only one. */
  pairing: PairingCodes | undefined;
  /** For people: which database, through what. */
  description: string;
  warnings: string[];
  db: Kysely<Tables>;
  /** Changes that were acknowledged and are not in the file any more. */
  lost: number;
  close(): Promise<void>;
}

/**
 * Opens the record of a data folder, or of a PostgreSQL database that other server processes may use as well.
 * @throws DatabaseTrouble
 */
export async function openRecord(
  folder: DataFolder,
  databaseUrl: string | undefined,
  demoFile: string,
): Promise<OpenRecord> {
  const shared = databaseUrl !== undefined && isServer(databaseUrl);
  const { db, repository: shareable, description } = await openDatabase(databaseUrl ?? folder.databaseFile);
  const opened: (() => Promise<unknown>)[] = [() => db.destroy()];
  const close = async () => {
    for (const end of opened.splice(0).reverse()) await end();
  };
  try {
    if (!shared) {
      await assertWritable(db, folder.databaseFile);
      await removeArriving(db);
    }
    const feed = shared
      ? await sharedFeed(databaseUrl)
      : { feed: new ChangeFeed(), close: async () => undefined };
    opened.push(feed.close);
    const repository = shared ? shareable : await FileRepository.open(db, folder.databaseFile);
    opened[0] = () => repository.close();
    const lost = repository instanceof FileRepository ? repository.lost : 0;
    const keeper = new Keeper(repository, feed.feed);
    const now = () => new Date();
    const pairing = shared ? new SqlPairing(db, now) : undefined;
    const sessions = shared ? new SqlSessions(db, now) : new FileSessions(folder.path, now);
    const warnings = folder.warning ? [folder.warning] : [];
    if (lost > 0) warnings.push(lostWords(lost));
    await plantDemo(keeper, demoFile).catch((error: Error) => warnings.push(`No demo: ${error.message}`));
    const jobs = await openJobs(new JobStore(db, () => keeper.timestamp()), keeper, shared && databaseUrl);
    opened.push(() => jobs.close());
    return { keeper, db, jobs, sessions, pairing, description, warnings, lost, close };
  } catch (error) {
    await close();
    throw error;
  }
}

function lostWords(lost: number): string {
  const which = lost === 1 ? 'One change that was saved is' : `${lost} changes that were saved are`;
  return `${which} missing from the record: a file beside it was deleted or damaged. Open the builds in the browsers that wrote last: what they still hold is sent again. The newest backup may hold the rest`;
}

/** SQLite opens a file that may not be written as well; better said at the start than at the first change. */
async function assertWritable(db: Kysely<Tables>, file: string): Promise<void> {
  try {
    await sql`delete from jobs where 1 = 0`.execute(db);
  } catch (error) {
    throw troubleOf(error, file) ?? error;
  }
}

/** What only PostgreSQL needs is loaded only for it. */
async function sharedFeed(address: string) {
  const { PostgresFeed } = await import('./postgres/postgres-feed.ts');
  const feed = await PostgresFeed.open(address);
  return { feed, close: () => feed.close() };
}

async function openJobs(store: JobStore, keeper: Keeper, address: string | false): Promise<Jobs> {
  if (address) {
    const { SharedJobs } = await import('./jobs/shared-jobs.ts');
    return SharedJobs.open(address, store, keeper);
  }
  const jobs = new LocalJobs(store, keeper);
  await jobs.takeUp();
  return jobs;
}

/** Where a data folder's own backups lie. */
export function backupsFolder(folder: DataFolder): string {
  return join(folder.path, 'backups');
}
