import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { CommandError, exitCodes } from './exit-codes.ts';

/** Writes a backup of a record to one file, while servers may run. Answers what to say. */
export async function backUp(options: { out: string; data?: string }): Promise<string> {
  const { backUpServer, makeBackup } = await import('../server/backup/make-backup.ts');
  const { packageVersion } = await import('../server/serve.ts');
  const out = resolve(options.out);
  if (existsSync(out)) throw new CommandError(`${out} is there already. Give another name`, exitCodes.input);
  const about = { out, madeAt: new Date().toISOString(), writtenBy: `Fairbend ${packageVersion()}` };
  const address = options.data === undefined ? process.env.DATABASE_URL : undefined;
  const manifest = await explained(async () =>
    address
      ? backUpServer({ address, ...about })
      : makeBackup({ databaseFile: (await dataFolderOf(options.data)).databaseFile, ...about }),
  );
  return `${out}: ${manifest.documents} documents, ${manifest.database.bytes} bytes, checked\n`;
}

/** Puts a backup in the place of a data folder's record; the old one is kept. Answers what to say. */
export async function restore(file: string, options: { data?: string }): Promise<string> {
  const { restoreBackup } = await import('../server/backup/restore-backup.ts');
  const { path } = await dataFolderOf(options.data);
  const { manifest, keptAs, copied } = await explained(() => restoreBackup(resolve(file), path, new Date()));
  const { copiedOtherwise } = await import('../server/vouch/copy-record.ts');
  const otherwise = copiedOtherwise(copied).map((sentence) => `${sentence}\n`);
  const before = keptAs ? `What stood there before is kept as ${keptAs}\n` : '';
  return `${path} holds the backup of ${manifest.madeAt}: ${manifest.documents} documents\n${before}${otherwise.join('')}`;
}

/** Copies a record from a data folder or PostgreSQL to an empty one. Answers what to say. */
export async function move({ from, to }: { from: string; to: string }): Promise<string> {
  const { moveRecord } = await import('../server/move/move-record.ts');
  const { withoutPassword } = await import('../server/database-trouble.ts');
  const moved = await explained(() => moveRecord(from, to, new Date()));
  const counts = Object.entries(moved).map(
    ([what, count]) => `${count} ${what === 'sessions' ? 'paired devices' : what}`,
  );
  return `${withoutPassword(to)}: ${counts.join(', ')}, read back equal. What stands in ${withoutPassword(from)} is left as it is\n`;
}

export async function dataFolderOf(data: string | undefined) {
  if (process.env.DATABASE_URL && data === undefined)
    throw new CommandError(
      'DATABASE_URL names a PostgreSQL database, which this does not work on: “fairbend move” copies it to an empty data folder, or back. For a data folder give --data FOLDER',
      exitCodes.input,
    );
  const { defaultDataFolder, openDataFolder } = await import('../server/data-folder.ts');
  return openDataFolder(data ? resolve(data) : defaultDataFolder(process.env, process.platform));
}

/** What went wrong in the builder's words is a message, not a crash. */
export async function explained<T>(work: () => Promise<T>): Promise<T> {
  const { BackupRefused } = await import('../server/backup/archive.ts');
  const { DatabaseTrouble } = await import('../server/database-trouble.ts');
  const { MoveRefused } = await import('../server/move/place.ts');
  const { ShopRefused } = await import('../server/shop-files/read-shop.ts');
  try {
    return await work();
  } catch (error) {
    const known = [BackupRefused, DatabaseTrouble, MoveRefused, ShopRefused].some(
      (kind) => error instanceof kind,
    );
    const system = (error as NodeJS.ErrnoException).syscall !== undefined;
    if (known || system) throw new CommandError((error as Error).message, exitCodes.input);
    throw error;
  }
}
