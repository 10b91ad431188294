import { existsSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { Backups } from '../backup/backups.ts';
import { putInPlace } from '../backup/restore-backup.ts';
import type { DataFolder } from '../data-folder.ts';
import { DatabaseTrouble } from '../database-trouble.ts';
import { runTask } from '../thread/run-task.ts';

/**
 * A restore that was killed between its two steps has put the record aside and nothing in its place: the record
 * goes back where it was. Answers what to tell, if anything.
 */
export function undoHalfDone({ path, databaseFile }: DataFolder): string[] {
  const parts = readdirSync(path).filter((name) =>
    /^((restore|import|repair)\.sqlite|(export-.*|import)\.zip|import)\.part|^fairbend-import-/.test(name),
  );
  if (parts.length === 0) return [];
  const said: string[] = [];
  if (!existsSync(databaseFile) && parts.some((name) => name.includes('.sqlite'))) {
    const aside = newestAside(path);
    if (aside) {
      for (const end of ['-wal', '-shm', ''])
        if (existsSync(aside + end)) renameSync(aside + end, databaseFile + end);
      said.push('Fairbend was ended while a backup was being put in place. The record is as it was before');
    }
  }
  for (const name of parts) rmSync(join(path, name), { recursive: true, force: true });
  return said;
}

function newestAside(path: string): string | undefined {
  const found = readdirSync(path).filter((name) => /^fairbend-before-.*\.sqlite$/.test(name));
  const byAge = found.map((name) => ({ file: join(path, name), at: statSync(join(path, name)).ctimeMs }));
  return byAge.sort((a, b) => b.at - a.at)[0]?.file;
}

/**
 * Opens the record; one whose file is damaged in its structure is made anew first, from what is good in it and from
 * its backups, and the damaged file is kept. @throws DatabaseTrouble where nothing can be made of it; then it is left
 * as it is
 */
export async function openOrRepair<T extends { warnings: string[] }>(
  folder: DataFolder,
  backups: Backups | undefined,
  open: () => Promise<T>,
): Promise<T> {
  try {
    return await open();
  } catch (error) {
    if (!backups || !(error instanceof DatabaseTrouble) || error.kind !== 'damaged') throw error;
    const repaired = await repairClosed(folder, backups).catch(() => undefined);
    if (!repaired) throw withNewestBackup(error, folder, backups);
    const record = await open();
    record.warnings.push(repaired);
    return record;
  }
}

async function repairClosed(folder: DataFolder, backups: Backups): Promise<string> {
  const archives = backups.list().map((note) => backups.fileOf(note.name)!);
  const at = new Date();
  const { filled, keptAs } = await putInPlace(
    { folder, at, why: 'repair' },
    async (fresh) => {
      const input = { file: folder.databaseFile, fresh, at: at.toISOString(), backups: archives };
      const copied = await runTask('repair', input);
      if (copied.documents === 0) throw new DatabaseTrouble('damaged', folder.databaseFile);
      return copied;
    },
    async (swap) => swap(),
  );
  const named = [...filled.mended, ...filled.leftOut].map(({ id, title, what }) => `${title || id}: ${what}`);
  const lines = named.length > 0 ? `. ${named.join('. ')}` : '';
  return `The database was damaged and is made anew from what was good and from the backups; the damaged file is kept as ${keptAs}${lines}`;
}

function withNewestBackup(trouble: DatabaseTrouble, { path }: DataFolder, backups: Backups): DatabaseTrouble {
  const newest = backups.list().find((note) => !note.damaged);
  if (!newest) return trouble;
  const file = backups.fileOf(newest.name)!;
  const command = `npm run fairbend -- restore ${JSON.stringify(file)} --data ${JSON.stringify(path)}`;
  return DatabaseTrouble.said('damaged', `${trouble.message}. The newest good backup is ${file}: ${command}`);
}
