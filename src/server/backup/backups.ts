import { mkdirSync, readdirSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupNote } from '../../record/api.ts';
import { makeBackup } from './make-backup.ts';
import { backupsToKeep } from './rotation.ts';

export interface BackupsOptions {
  databaseFile: string;
  /** Where they are kept. */
  folder: string;
  writtenBy: string;
  now(): Date;
}

const dayMs = 24 * 3600 * 1000;
/** fairbend-2026-03-01T09-30-00-000Z.zip */
const namePattern = /^fairbend-(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)-(\d{3})Z\.zip$/;

/** The backups a server makes by itself: at its start and every day, the older ones thinned out. */
export class Backups {
  private readonly options: BackupsOptions;
  private timer: NodeJS.Timeout | undefined;
  private working: Promise<unknown> = Promise.resolve();

  constructor(options: BackupsOptions) {
    this.options = options;
  }

  /** The first one now, behind the scenes; a failure is told, and tried again the next day. */
  start(failed: (error: Error) => void): void {
    const make = () => void this.make().catch(failed);
    this.timer = setInterval(make, dayMs);
    this.timer.unref();
    make();
  }

  /** Waits for one that is being made. */
  async close(): Promise<void> {
    clearInterval(this.timer);
    await this.working;
  }

  /** Makes one now, after any that is being made, and thins out. @throws DatabaseTrouble, or the disk's error */
  make(): Promise<BackupNote> {
    const made = this.working.then(() => this.makeOne());
    this.working = made.catch(() => undefined);
    return made;
  }

  /** The newest first. */
  list(): BackupNote[] {
    const names = readFolder(this.options.folder).filter((name) => namePattern.test(name));
    return names
      .map((name) => {
        return { name, madeAt: instantOf(name), bytes: statSync(join(this.options.folder, name)).size };
      })
      .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
  }

  /** The file of a backup by its name; undefined where there is none. */
  fileOf(name: string): string | undefined {
    return this.list().some((note) => note.name === name) ? join(this.options.folder, name) : undefined;
  }

  private async makeOne(): Promise<BackupNote> {
    const { folder, databaseFile, writtenBy, now } = this.options;
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    // Left by a process that was ended in the middle of one.
    for (const name of readFolder(folder)) if (/\.zip\.(copy|part)/.test(name)) rmSync(join(folder, name));
    const madeAt = now().toISOString();
    const name = `fairbend-${madeAt.replace(/[:.]/g, '-')}.zip`;
    await makeBackup({ databaseFile, out: join(folder, name), madeAt, writtenBy });
    this.thinOut();
    return this.list().find((note) => note.name === name)!;
  }

  private thinOut(): void {
    const made = this.list();
    const kept = backupsToKeep(made.map((note) => note.madeAt));
    for (const { name, madeAt } of made) if (!kept.has(madeAt)) rmSync(join(this.options.folder, name));
  }
}

function readFolder(folder: string): string[] {
  try {
    return readdirSync(folder);
  } catch {
    return [];
  }
}

function instantOf(name: string): string {
  return name.replace(namePattern, '$1$2:$3:$4.$5Z');
}
