import { cpSync, existsSync, mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { encode } from 'fast-png';
import { afterAll, beforeAll, expect, test } from 'vitest';
import { seededRandom } from '../../../test/kit/server-process.ts';
import { makeOperations } from '../../record/document.ts';
import type { Change } from '../../record/operation.ts';
import { BackupRefused } from '../backup/archive.ts';
import { makeBackup } from '../backup/make-backup.ts';
import { restoreBackup } from '../backup/restore-backup.ts';
import { ChangeFeed } from '../change-feed.ts';
import { openDatabase } from '../database.ts';
import { DatabaseTrouble } from '../database-trouble.ts';
import { DamagedError } from '../errors.ts';
import { FileRepository } from '../file-repository.ts';
import { freeze } from '../freeze.ts';
import { Keeper } from '../keeper.ts';
import { checkRecord } from './check-record.ts';
import { identitySeal } from './seals.ts';

/** Single bits flipped; more in a long run: FLIPS=3000. */
const flips = Number(process.env.FLIPS ?? 300);

/** Hundreds of records are opened and closed: in memory where that can be, since no power fails here. */
const scratch = existsSync('/dev/shm') ? '/dev/shm' : tmpdir();
const folder = mkdtempSync(join(scratch, 'fairbend-flips-'));
afterAll(() => rmSync(folder, { recursive: true, force: true }));
const of = (...names: string[]) => join(folder, ...names);

/** A record with its log beside it, as a kill leaves it; the same with the log written back; and a backup. */
let truth: Shown;
beforeAll(async () => {
  const { db } = await openDatabase(of('fairbend.sqlite'));
  // The same bytes in every run, but for when the migrations ran.
  const identity = { record: 'r-1616', restored_at: '' };
  await db
    .updateTable('identity')
    .set({ ...identity, seal: identitySeal(identity) })
    .execute();
  const repository = await FileRepository.open(db, of('fairbend.sqlite'));
  const keeper = new Keeper(repository, new ChangeFeed(), () => new Date('2026-03-01T09:00:00Z'));
  for (let build = 0; build < 6; build++) {
    const id = `build-${build}`;
    await keeper.createFrom('build', [{ path: ['about', '-', 'title'], value: `Brook ${build}` }], id);
    for (let step = 0; step < 12; step++) {
      const by = { device: 'd1-a', gesture: `step ${step}`, at: keeper.timestamp() };
      await keeper.append(id, makeOperations(await keeper.state(id), edits(build, step), by));
    }
    await freeze(keeper, id, '1.0.0');
  }
  const png = new Uint8Array(encode({ width: 64, height: 64, channels: 1, data: noise(64 * 64) }));
  const hash = (await crypto.subtle.digest('SHA-256', png)) as ArrayBuffer;
  await repository.addAttachment(
    { hash: Buffer.from(hash).toString('hex'), type: 'image/png', bytes: png },
    keeper.timestamp(),
  );
  truth = await shownBy(keeper);
  for (const end of ['', '-wal', '-count'])
    cpSync(of(`fairbend.sqlite${end}`), of('with-log', `fairbend.sqlite${end}`));
  await repository.close();
  cpSync(of('fairbend.sqlite'), of('plain', 'fairbend.sqlite'));
  await makeBackup({ databaseFile: of('plain', 'fairbend.sqlite'), out: of('backup.zip'), ...by });
});

const by = { madeAt: '2026-03-01T10:00:00.000Z', writtenBy: 'test' };

function edits(build: number, step: number): Change[] {
  return [
    { path: ['about', '-', 'note'], value: `note ${step} of ${build}` },
    { path: ['blank', '-', 'label'], value: `Invented ${build}-${step}` },
    { path: ['sections', `s${step}`, 'name'], value: `section ${step}` },
    { path: ['sections', `s${step}`, 'mass'], value: { si: 0.01 + step / 1000, text: `${10 + step} g` } },
  ];
}

function noise(length: number): Uint8Array {
  const random = seededRandom(7);
  return Uint8Array.from({ length }, () => Math.floor(random() * 256));
}

/** Everything a page can be shown, piece by piece. */
type Shown = Map<string, unknown>;

/** What is damaged is a DamagedError, or marked; it then is no value. */
async function shownBy(keeper: Keeper): Promise<Shown> {
  const shown: Shown = new Map();
  const put = async (name: string, read: () => Promise<unknown>) => {
    try {
      shown.set(name, await read());
    } catch (error) {
      if (!(error instanceof DamagedError) && !isTrouble(error)) throw error;
    }
  };
  const { repository } = keeper;
  await put('opening', () => repository.opening());
  const query = { kind: 'build', search: '', gone: false, limit: 100, offset: 0 } as const;
  await put('shelf', async () => {
    const { documents } = await repository.list(query);
    for (const document of documents) if (!document.damaged) shown.set(`card ${document.id}`, document);
    return undefined;
  });
  for (const id of await repository.documentIds().catch(() => [])) {
    await put(`state ${id}`, async () => [...(await keeper.state(id)).cells]);
    await put(`revisions ${id}`, async () => {
      for (const { revision } of await repository.revisions(id))
        await put(`revision ${id} ${revision}`, () => repository.revision(id, revision));
      return undefined;
    });
    await put(`changes ${id}`, async () => {
      const { operations, damage } = await keeper.operationsAfter(id, 0);
      for (const operation of operations) shown.set(`change ${id} ${operation.seq}`, operation);
      return damage ? undefined : operations.length;
    });
  }
  await put('pictures', async () => {
    for (const note of await repository.attachmentNotes()) {
      shown.set(`picture note ${note.hash}`, note);
      await put(`picture ${note.hash}`, async () =>
        Buffer.from((await repository.attachment(note.hash))!.bytes).toString('base64'),
      );
    }
    return undefined;
  });
  for (const [name, value] of shown) if (value === undefined) shown.delete(name);
  return shown;
}

function isTrouble(error: unknown): boolean {
  const { code, errcode } = error as { code?: string; errcode?: number };
  return String(code).startsWith('SQLITE_CORRUPT') || code === 'ERR_OUT_OF_RANGE' || errcode !== undefined;
}

interface Outcome {
  /** Shown as good, and not what was stored. */
  wrong: string[];
  /** Not shown, though it was stored. */
  missing: string[];
  /** Said by the start, the check, or the count of changes. */
  noticed: boolean;
}

async function look(file: string): Promise<Outcome> {
  try {
    const { db } = await openDatabase(file);
    try {
      const repository = await FileRepository.open(db, file);
      const keeper = new Keeper(repository, new ChangeFeed());
      const shown = await shownBy(keeper);
      const { damaged } = await checkRecord(db, { structure: true });
      const wrong = [...shown].filter(([name, value]) => !same(value, truth.get(name))).map(([name]) => name);
      const missing = [...truth.keys()].filter((name) => !shown.has(name));
      return { wrong, missing, noticed: damaged.length > 0 || repository.lost > 0 };
    } finally {
      await db.destroy();
    }
  } catch (error) {
    if (error instanceof DatabaseTrouble || isTrouble(error) || error instanceof DamagedError)
      return { wrong: [], missing: [], noticed: true };
    throw error;
  }
}

function same(a: unknown, b: unknown): boolean {
  return JSON.stringify(a) === JSON.stringify(b);
}

/** A copy of the folder with one bit of one file turned. */
function flipped(from: string, name: string, random: () => number): string {
  rmSync(of('turned'), { recursive: true, force: true });
  cpSync(of(from), of('turned'), { recursive: true });
  const bytes = readFileSync(of('turned', name));
  const at = Math.floor(random() * bytes.length);
  bytes[at] ^= 1 << Math.floor(random() * 8);
  writeFileSync(of('turned', name), bytes);
  return of('turned', 'fairbend.sqlite');
}

/** A backup that says it is whole holds what was stored, all of it. */
async function backedUp(file: string): Promise<string> {
  rmSync(of('made.zip'), { force: true });
  rmSync(of('back'), { recursive: true, force: true });
  try {
    const { leftOut } = await makeBackup({ databaseFile: file, out: of('made.zip'), ...by });
    await restoreBackup(of('made.zip'), of('back'), new Date('2026-03-02T09:00:00Z'));
    const outcome = await look(of('back', 'fairbend.sqlite'));
    const wrong = outcome.wrong.filter((name) => name !== 'opening');
    if (wrong.length > 0) return `backed up ${wrong[0]}`;
    if (!leftOut && outcome.missing.length > 0) return `left out in silence: ${outcome.missing[0]}`;
    return '';
  } catch (error) {
    if (error instanceof DatabaseTrouble || error instanceof BackupRefused) return '';
    throw error;
  }
}

test(
  `of ${flips} flipped bits none shows a changed value as good, hides one in silence, or reaches a backup`,
  async () => {
    const random = seededRandom(1616);
    const mistakes: string[] = [];
    let noticed = 0;
    for (let flip = 0; flip < flips; flip++) {
      const log = flip % 3 === 1;
      const file = log
        ? flipped('with-log', 'fairbend.sqlite-wal', random)
        : flipped('plain', 'fairbend.sqlite', random);
      const outcome = await look(file);
      if (outcome.noticed) noticed += 1;
      // A log that ends too early gives the record as it was a little before; the count of changes says so.
      if (!log || !outcome.noticed)
        for (const name of outcome.wrong) mistakes.push(`${flip}: ${name} is shown changed`);
      if (outcome.missing.length > 0 && !outcome.noticed)
        mistakes.push(`${flip}: ${outcome.missing[0]} is hidden in silence`);
      if (flip % 9 === 2) {
        const made = await backedUp(file);
        if (made) mistakes.push(`${flip}: ${made}`);
      }
    }
    expect(mistakes).toEqual([]);
    expect(noticed).toBeGreaterThan(flips / 10);
  },
  300_000 + flips * 500,
);

test(`of ${Math.ceil(flips / 6)} flipped bits of a backup none is put in place as another value`, async () => {
  const random = seededRandom(61);
  const whole = readFileSync(of('backup.zip'));
  for (let flip = 0; flip < flips / 6; flip++) {
    const bytes = Buffer.from(whole);
    bytes[Math.floor(random() * bytes.length)] ^= 1 << Math.floor(random() * 8);
    writeFileSync(of('turned.zip'), bytes);
    rmSync(of('back'), { recursive: true, force: true });
    try {
      await restoreBackup(of('turned.zip'), of('back'), new Date('2026-03-02T09:00:00Z'));
    } catch (error) {
      expect(error).toBeInstanceOf(BackupRefused);
      expect(readdirSync(of('back')).filter((name) => name === 'fairbend.sqlite')).toEqual([]);
      continue;
    }
    const { wrong, missing } = await look(of('back', 'fairbend.sqlite'));
    expect([...wrong, ...missing].filter((name) => name !== 'opening')).toEqual([]);
  }
}, 120_000);
