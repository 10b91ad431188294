import { existsSync } from 'node:fs';
import { resolve } from 'node:path';
import { CommandError, exitCodes } from './exit-codes.ts';

/** Writes a backup of a data folder's record to one file, while a server may run. Answers what to say. */
export async function backUp(options: { out: string; data?: string }): Promise<string> {
  const { makeBackup } = await import('../server/backup/make-backup.ts');
  const { packageVersion } = await import('../server/serve.ts');
  const out = resolve(options.out);
  if (existsSync(out)) throw new CommandError(`${out} is there already. Give another name`, exitCodes.input);
  const { databaseFile } = await dataFolderOf(options.data);
  const manifest = await explained(() =>
    makeBackup({
      databaseFile,
      out,
      madeAt: new Date().toISOString(),
      writtenBy: `Fairbend ${packageVersion()}`,
    }),
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
      'DATABASE_URL names a PostgreSQL database, which is backed up by its own means (pg_dump), or copied to an empty data folder by “fairbend move”. For a data folder give --data FOLDER',
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
