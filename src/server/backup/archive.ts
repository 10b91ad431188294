import { createHash } from 'node:crypto';
import { closeSync, fsyncSync, openSync, readSync, rmSync, statSync, writeSync } from 'node:fs';
import { setImmediate as breathe } from 'node:timers/promises';
import { Unzip, UnzipInflate, Zip, ZipDeflate } from 'fflate';
import { z } from 'zod';
import type { DamageNote } from '../../record/record-api.ts';
import { migrations } from '../migrations/index.ts';

/** What a backup says about itself: the first entry of the archive, `manifest.json`. */
export interface Manifest {
  format: typeof backupFormat;
  version: 1;
  /** Which record (database) it is of. */
  record: string;
  madeAt: string;
  writtenBy: string;
  /** Name of the last migration the database had. */
  schema: string;
  documents: number;
  /** Those of the builder's own; older backups do not say. */
  own?: number;
  /** What of the record was damaged and is not in it; absent where all of it was good. */
  leftOut?: DamageNote[];
  database: { name: string; bytes: number; sha256: string };
}

export const backupFormat = 'fairbend backup';
export const databaseEntry = 'fairbend.sqlite';
const manifestEntry = 'manifest.json';
const largestManifest = 100_000;
/** What the zip format without its 64-bit extension can hold. */
const largestDatabase = 2 ** 32 - 1;
/** Small enough that a piece that unpacks a thousandfold still fits into memory. */
const chunkBytes = 64 * 1024;

const manifestShape: z.ZodType<Manifest> = z.strictObject({
  format: z.literal(backupFormat),
  version: z.literal(1),
  record: z.string().max(100),
  madeAt: z.iso.datetime(),
  writtenBy: z.string().max(100),
  schema: z.string().max(100),
  documents: z.int().min(0),
  own: z.int().min(0).optional(),
  leftOut: z
    .array(z.strictObject({ id: z.string().max(100), title: z.string(), what: z.string() }))
    .optional(),
  database: z.strictObject({
    name: z.literal(databaseEntry),
    bytes: z.int().min(0).max(largestDatabase),
    sha256: z.string().regex(/^[0-9a-f]{64}$/),
  }),
});

/** The file is no backup, or not a whole one; nothing was changed. */
export class BackupRefused extends Error {}

/** Writes one .zip of the manifest and the database file; it yields between pieces, so a server goes on answering. */
export async function writeArchive(
  database: string,
  about: Pick<Manifest, 'record' | 'madeAt' | 'writtenBy' | 'documents' | 'own' | 'leftOut'>,
  out: string,
): Promise<Manifest> {
  const bytes = statSync(database).size;
  if (bytes > largestDatabase)
    throw new BackupRefused(
      `The database has ${bytes} bytes; one archive holds 4 GB. Use "fairbend export FOLDER" instead`,
    );
  const manifest: Manifest = {
    format: backupFormat,
    version: 1,
    ...about,
    schema: Object.keys(migrations).at(-1)!,
    database: { name: databaseEntry, bytes, sha256: await hashOf(database) },
  };
  const file = openSync(out, 'w', 0o600);
  try {
    const zip = new Zip((error, chunk) => {
      if (error) throw error;
      writeSync(file, chunk);
    });
    const head = new ZipDeflate(manifestEntry);
    zip.add(head);
    head.push(new TextEncoder().encode(`${JSON.stringify(manifest, null, 2)}\n`), true);
    const body = new ZipDeflate(databaseEntry, { level: 4 });
    zip.add(body);
    for await (const { chunk, last } of chunksOf(database)) body.push(chunk, last);
    zip.end();
    fsyncSync(file);
  } finally {
    closeSync(file);
  }
  return manifest;
}

/**
 * Unpacks the database of a backup to `out` and checks it against the manifest. Names inside the archive are
 * compared, never used as paths; what is larger than the manifest says is not unpacked further.
 * @throws BackupRefused; then `out` is gone
 */
export async function readArchive(archive: string, out: string): Promise<Manifest> {
  const file = openSync(out, 'w', 0o600);
  try {
    return await unpack(archive, (chunk) => writeSync(file, chunk));
  } catch (error) {
    rmSync(out, { force: true });
    throw error;
  } finally {
    closeSync(file);
  }
}

/** Reads a backup to its end without keeping any of it. @throws BackupRefused where it would not come back */
export function checkArchive(archive: string): Promise<Manifest> {
  return unpack(archive, () => undefined);
}

/** What a backup says about itself, read off its beginning; undefined where it says nothing that can be read. */
export async function manifestOf(archive: string): Promise<Manifest | undefined> {
  try {
    const unpacked = new Unpacking(() => undefined);
    for await (const { chunk, last } of chunksOf(archive)) {
      unpacked.push(chunk, last);
      if (unpacked.manifest) return unpacked.manifest;
    }
  } catch (error) {
    if (!(error instanceof BackupRefused)) throw error;
  }
  return undefined;
}

async function unpack(archive: string, write: (chunk: Uint8Array) => void): Promise<Manifest> {
  const hash = createHash('sha256');
  const unpacked = new Unpacking((chunk) => {
    hash.update(chunk);
    write(chunk);
  });
  for await (const { chunk, last } of chunksOf(archive)) unpacked.push(chunk, last);
  const manifest = unpacked.manifestOrThrow();
  if (hash.digest('hex') === manifest.database.sha256) return manifest;
  throw new BackupRefused('The database in this backup is not what its manifest says. Take another backup');
}

/** The two entries of a backup as they come out of the zip, in this order. */
class Unpacking {
  private readonly unzip: Unzip;
  private head = new Uint8Array(0);
  manifest: Manifest | undefined;
  private written = 0;
  private done = false;
  private readonly write: (chunk: Uint8Array) => void;

  constructor(write: (chunk: Uint8Array) => void) {
    this.write = write;
    this.unzip = new Unzip((entry) => {
      const take = { [manifestEntry]: this.takeManifest, [databaseEntry]: this.takeDatabase }[entry.name];
      if (!take) throw new BackupRefused(`${notOurs}: it holds ${JSON.stringify(entry.name.slice(0, 80))}`);
      entry.ondata = (error, chunk, last) => {
        // What is thrown below comes back through here.
        if (error) throw error instanceof BackupRefused ? error : new BackupRefused(cutShort);
        take.call(this, chunk, last);
      };
      entry.start();
    });
    this.unzip.register(UnzipInflate);
  }

  push(chunk: Uint8Array, last: boolean): void {
    try {
      this.unzip.push(chunk, last);
    } catch (error) {
      throw error instanceof BackupRefused ? error : new BackupRefused(cutShort, { cause: error });
    }
  }

  manifestOrThrow(): Manifest {
    if (!this.manifest && this.head.length === 0) throw new BackupRefused(notOurs);
    if (!this.manifest || !this.done) throw new BackupRefused(cutShort);
    return this.manifest;
  }

  private takeManifest(chunk: Uint8Array, last: boolean): void {
    const joined = new Uint8Array(this.head.length + chunk.length);
    joined.set(this.head);
    joined.set(chunk, this.head.length);
    this.head = joined;
    if (joined.length > largestManifest) throw new BackupRefused(`${notOurs}: its manifest is too large`);
    if (last) this.manifest = manifestFrom(new TextDecoder().decode(joined));
  }

  private takeDatabase(chunk: Uint8Array, last: boolean): void {
    if (!this.manifest || this.done) throw new BackupRefused(`${notOurs}: its manifest does not come first`);
    this.written += chunk.length;
    if (this.written > this.manifest.database.bytes)
      throw new BackupRefused(
        'The database in this backup is larger than its manifest says. Take another backup',
      );
    this.write(chunk);
    this.done = last;
  }
}

const notOurs = 'This file is no backup made by Fairbend';
const cutShort =
  'This backup is cut short or damaged. Take another one; the automatic ones lie in the folder "backups"';

function manifestFrom(text: string): Manifest {
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch {
    throw new BackupRefused(`${notOurs}: its manifest is not JSON`);
  }
  const parsed = manifestShape.safeParse(json);
  if (!parsed.success) {
    const { version } = json as { version?: unknown };
    if (typeof version === 'number' && version > 1)
      throw new BackupRefused('This backup was made by a newer Fairbend. Update this one');
    throw new BackupRefused(
      `${notOurs}: ${parsed.error.issues[0].path.join('/')} of its manifest does not fit`,
    );
  }
  if (!Object.hasOwn(migrations, parsed.data.schema))
    throw new BackupRefused('This backup was made by a newer Fairbend. Update this one');
  return parsed.data;
}

async function hashOf(file: string): Promise<string> {
  const hash = createHash('sha256');
  for await (const { chunk } of chunksOf(file)) hash.update(chunk);
  return hash.digest('hex');
}

async function* chunksOf(file: string): AsyncGenerator<{ chunk: Uint8Array; last: boolean }> {
  const { size } = statSync(file);
  const opened = openSync(file, 'r');
  try {
    let at = 0;
    do {
      const chunk = new Uint8Array(Math.min(chunkBytes, size - at));
      const read = readSync(opened, chunk, 0, chunk.length, at);
      at += read;
      yield { chunk: chunk.subarray(0, read), last: at >= size || read === 0 };
      if (read === 0) return;
      await breathe();
    } while (at < size);
  } finally {
    closeSync(opened);
  }
}
