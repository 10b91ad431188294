import { mkdirSync, readdirSync, renameSync, rmSync, statSync } from 'node:fs';
import { join } from 'node:path';
import type { BackupNote } from '../../record/record-api.ts';
import { CalledOff, runTask, type TaskOptions } from '../thread/run-task.ts';
import { Works } from '../thread/works.ts';
import { checkArchive } from './archive.ts';
import { backupToDrop } from './rotation.ts';

export interface BackupsOptions {
  databaseFile: string;
  /** The postgres:// address of the record, where it is not in the file. */
  address?: string;
  /** Where they are kept. */
  folder: string;
  writtenBy: string;
  now(): Date;
  works?: Works;
}

const dayMs = 24 * 3600 * 1000;
const hourMs = 3600 * 1000;
/** fairbend-2026-03-01T09-30-00-000Z.zip; what was made by hand, or leaves damaged parts out, says so. */
const namePattern = /^fairbend-(\d{4}-\d\d-\d\dT)(\d\d)-(\d\d)-(\d\d)-(\d{3})Z(-by-hand)?(-damaged)?\.zip$/;

/** How the last attempt went wrong. */
export interface BackupFailure {
  at: string;
  message: string;
}

/** The backups a server makes by itself: at its start and every day, the older ones thinned out. */
export class Backups {
  private readonly options: BackupsOptions;
  private readonly works: Works;
  private timer: NodeJS.Timeout | undefined;
  private readonly ending = new AbortController();
  private working: Promise<unknown> = Promise.resolve();
  /** Of the last attempt; undefined once one succeeds. */
  failure: BackupFailure | undefined;

  constructor(options: BackupsOptions) {
    this.options = options;
    this.works = options.works ?? new Works();
  }

  /** The first one now, behind the scenes; a failure is told, and tried again within the hour. Called off is none. */
  start(failed: (error: Error) => void): void {
    const make = () => this.make().catch((error: Error) => error instanceof CalledOff || failed(error));
    let nextMs = 0;
    const look = () => {
      // Counted by the process, not by the clock, which may jump.
      const nowMs = performance.now();
      if (nowMs < nextMs && !this.failure) return;
      nextMs = nowMs + dayMs;
      void make();
    };
    this.timer = setInterval(look, hourMs);
    this.timer.unref();
    look();
  }

  /** One that is being made is given up; the next start makes one. */
  async close(): Promise<void> {
    clearInterval(this.timer);
    this.ending.abort();
    await this.working;
  }

  /** Makes one now, after any that is being made, and thins out. @throws DatabaseTrouble, or the disk's error */
  make(byHand = false): Promise<BackupNote> {
    const made = this.working.then(() => this.makeOne(byHand));
    made.then(
      () => {
        this.failure = undefined;
      },
      (error: Error) => {
        if (error instanceof CalledOff) return;
        this.failure = { at: this.options.now().toISOString(), message: error.message };
      },
    );
    this.working = made.catch(() => undefined);
    return made;
  }

  /** The newest first. */
  list(): BackupNote[] {
    const names = readFolder(this.options.folder).filter((name) => namePattern.test(name));
    return names
      .map((name) => {
        const [, , , , , , byHand, damaged] = namePattern.exec(name)!;
        return {
          name,
          madeAt: instantOf(name),
          bytes: statSync(join(this.options.folder, name)).size,
          byHand: byHand !== undefined,
          damaged: damaged !== undefined,
        };
      })
      .sort((a, b) => (a.madeAt < b.madeAt ? 1 : -1));
  }

  /** The file of a backup by its name; undefined where there is none. */
  fileOf(name: string): string | undefined {
    return this.list().some((note) => note.name === name) ? join(this.options.folder, name) : undefined;
  }

  private async makeOne(byHand: boolean): Promise<BackupNote> {
    const { folder, databaseFile, address, writtenBy, now } = this.options;
    mkdirSync(folder, { recursive: true, mode: 0o700 });
    removeHalfMade(folder);
    const at = now();
    const madeAt = this.freeInstant(at).toISOString();
    const stem = `fairbend-${madeAt.replace(/[:.]/g, '-')}${byHand ? '-by-hand' : ''}`;
    const out = join(folder, `${stem}.zip`);
    const about = { out, madeAt, writtenBy };
    const make = (task: TaskOptions) =>
      address
        ? runTask('serverBackup', { address, ...about }, task)
        : runTask('backup', { databaseFile, ...about }, task);
    const { leftOut } = await this.works
      .run('backup', make, this.ending.signal)
      .finally(() => removeHalfMade(folder));
    const name = leftOut ? `${stem}-damaged.zip` : `${stem}.zip`;
    if (leftOut) renameSync(out, join(folder, name));
    else if (!byHand) await this.thinOut(madeAt, at);
    return this.list().find((note) => note.name === name)!;
  }

  /** Two of one instant would be one file: the clock may have been set back. */
  private freeInstant(at: Date): Date {
    const taken = new Set(this.list().map((note) => note.madeAt));
    let free = at;
    while (taken.has(free.toISOString())) free = new Date(free.getTime() + 1);
    return free;
  }

  /** One that is whole has been made; one may go, where the next newer one can still be read to its end. */
  private async thinOut(justMade: string, now: Date): Promise<void> {
    const made = this.list().filter((note) => !note.byHand && !note.damaged);
    const going = backupToDrop(
      made.map((note) => note.madeAt),
      justMade,
      now,
    );
    const index = made.findIndex((note) => note.madeAt === going);
    if (index < 0) return;
    const path = (at: number) => join(this.options.folder, made[at].name);
    // The newest was read to its end when it was made.
    const newer = made[index - 1];
    if (newer && newer.madeAt !== justMade && !(await isGood(path(index - 1)))) {
      renameSync(path(index - 1), path(index - 1).replace(/\.zip$/, '-damaged.zip'));
      return;
    }
    rmSync(path(index));
  }
}

async function isGood(archive: string): Promise<boolean> {
  return checkArchive(archive).then(
    () => true,
    () => false,
  );
}

/** Left by one that was called off, or by a process that was ended in the middle of it. */
function removeHalfMade(folder: string): void {
  for (const name of readFolder(folder))
    if (/\.zip\.(copy|part)/.test(name)) rmSync(join(folder, name), { force: true });
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
