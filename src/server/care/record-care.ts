import { readFileSync, writeFileSync } from 'node:fs';
import { join } from 'node:path';
import type { RecordStanding, RepairAnswer } from '../../record/record-api.ts';
import { manifestOf } from '../backup/archive.ts';
import type { Backups } from '../backup/backups.ts';
import { putInPlace } from '../backup/restore-backup.ts';
import type { DataFolder } from '../data-folder.ts';
import { ConflictError, NotFoundError } from '../errors.ts';
import { isOwn } from '../keeper.ts';
import type { OpenRecord } from '../open-record.ts';
import { both, runTask, type TaskOptions } from '../thread/run-task.ts';
import type { Works } from '../thread/works.ts';
import { checkRecord, type RecordVerdict } from '../vouch/check-record.ts';

export interface CareParts {
  folder: DataFolder;
  /** The record that stands now. */
  record(): OpenRecord;
  backups?: Backups;
  /** The postgres:// address of the record, where it is not in a file of the data folder. */
  address?: string;
  /** Closes the record, lets another take its place, opens that. */
  replace(swap: () => string | undefined): Promise<string | undefined>;
  now(): Date;
  works: Works;
}

const hourMs = 3600 * 1000;
const dayMs = 24 * hourMs;

/** Reads the whole record from time to time, says what can be relied on, and mends what cannot. */
export class RecordCare {
  private readonly parts: CareParts;
  private timer: NodeJS.Timeout | undefined;
  private reading: { done: number; total: number } | undefined;
  private damaged: RecordVerdict['damaged'] = [];
  private ending = new AbortController();
  private checking: Promise<void> | undefined;

  constructor(parts: CareParts) {
    this.parts = parts;
  }

  /** Reads it all now and every day, behind the scenes. */
  start(): void {
    const read = () => void this.check().catch(() => undefined);
    this.timer = setInterval(read, dayMs);
    this.timer.unref();
    read();
  }

  async close(): Promise<void> {
    clearInterval(this.timer);
    this.ending.abort();
    await this.checking?.catch(() => undefined);
  }

  async standing(): Promise<RecordStanding> {
    const { backups, record } = this.parts;
    const newest = backups?.list().find((note) => !note.damaged);
    return {
      wholeAt: this.wholeAt(
        await record()
          .keeper.repository.identity()
          .catch(() => ''),
      ),
      reading: this.reading ?? null,
      damaged: this.damaged,
      lost: record().lost,
      backups: backups ? { madeAt: newest?.madeAt ?? null, failure: backups.failure ?? null } : null,
      space: await this.space(),
      found: await this.foundBeside(),
    };
  }

  /** Reads all of it once; one reading at a time. */
  check(): Promise<void> {
    this.checking ??= this.readAll().finally(() => {
      this.checking = undefined;
      this.reading = undefined;
    });
    return this.checking;
  }

  /** @throws ConflictError, NotFoundError, DatabaseTrouble; then nothing was changed */
  async repair(): Promise<RepairAnswer> {
    const { backups, address } = this.parts;
    if (!backups) throw new NotFoundError('This server keeps no backups to repair its record from');
    await this.check();
    if (this.damaged.length === 0)
      throw new ConflictError('All of the record was read, and all of it is what was stored');
    const archives = backups.list().flatMap((note) => backups.fileOf(note.name) ?? []);
    const { keptAs, ...mended } = await (address
      ? this.mendServer(address, archives)
      : this.makeAnew(archives));
    await this.check();
    return { ...mended, keptAs };
  }

  /** From what is good in the file and from the backups. */
  private async makeAnew(backups: string[]): Promise<RepairAnswer> {
    const { folder, replace, now } = this.parts;
    const at = now();
    const input = { file: folder.databaseFile, at: at.toISOString(), backups };
    const fill = (fresh: string) =>
      this.parts.works.run(
        'repair',
        (task) => runTask('repair', { ...input, fresh }, task),
        this.ending.signal,
      );
    const { filled, keptAs } = await putInPlace({ folder, at, why: 'repair' }, fill, replace);
    return { mended: filled.mended, leftOut: filled.leftOut, keptAs: keptAs ?? null };
  }

  /** Other server processes may be writing: each damaged part is replaced where it stands. */
  private async mendServer(address: string, backups: string[]): Promise<RepairAnswer> {
    const { folder, replace, now, works } = this.parts;
    const at = now().toISOString();
    const keptAs = join(folder.path, `fairbend-before-repair-${at.replace(/[:.]/g, '-')}.jsonl`);
    const input = { address, at, backups, keptAs };
    const mended = await works.run('repair', (task) => runTask('mend', input, task), this.ending.signal);
    // Open pages begin anew, and compare what they have with what is there now.
    await replace(() => undefined);
    return { ...mended, keptAs };
  }

  /** What of it cannot be told (a damaged file) is left out. */
  private async space(): Promise<RecordStanding['space']> {
    const { backups, record } = this.parts;
    const taken = await record()
      .keeper.repository.size()
      .catch(() => undefined);
    if (taken === undefined) return null;
    return { record: taken, backups: backups?.list().reduce((sum, { bytes }) => sum + bytes, 0) ?? 0 };
  }

  private async readAll(): Promise<void> {
    const { folder, address, record } = this.parts;
    const { keeper, db } = record();
    const onProgress = (done: number, total: number) => {
      this.reading = { done, total };
    };
    onProgress(0, 0);
    const read = (task: Required<TaskOptions>) => {
      const told = { ...task, onProgress: both(onProgress, task.onProgress) };
      if (!address) return runTask('check', { file: folder.databaseFile }, told);
      const { signal: closing } = told;
      const reading = db.transaction().setIsolationLevel('repeatable read');
      return reading.execute((trx) => checkRecord(trx, { onProgress: told.onProgress, closing }));
    };
    const verdict = await this.parts.works.run('check', read, this.ending.signal);
    this.damaged = verdict.damaged;
    if (verdict.damaged.length > 0) return;
    this.noteWhole(await keeper.repository.identity());
  }

  private get noteFile(): string {
    return join(this.parts.folder.path, 'last-read.json');
  }

  private noteWhole(record: string): void {
    writeFileSync(this.noteFile, `${JSON.stringify({ record, at: this.parts.now().toISOString() })}\n`);
  }

  private wholeAt(record: string): string | null {
    try {
      const note = JSON.parse(readFileSync(this.noteFile, 'utf8')) as { record: string; at: string };
      return note.record === record ? note.at : null;
    } catch {
      return null;
    }
  }

  /** A record with nothing of the builder's own, beside a backup that has more than it: the wrong folder, or a mishap. */
  private async foundBeside(): Promise<RecordStanding['found']> {
    const { backups, address, record } = this.parts;
    // Into PostgreSQL none is brought back by a press.
    if (!backups || address) return null;
    const ids = await record().keeper.repository.documentIds();
    if (ids.some(isOwn)) return null;
    for (const { name, madeAt, damaged } of backups.list()) {
      const manifest = damaged ? undefined : await manifestOf(backups.fileOf(name)!);
      // Two may be the demo and the shop's own document.
      const own = manifest && (manifest.own ?? manifest.documents - 2);
      if (own && own > 0) return { name, madeAt, builds: own };
    }
    return null;
  }
}
