import { createReadStream, rmSync } from 'node:fs';
import { join } from 'node:path';
import { newId } from '../keeper.ts';
import { runTask, type TaskOptions } from '../thread/run-task.ts';
import type { WrittenBy } from './write-shop.ts';

/** Where the record stands, and a folder for what is made of it and goes again. */
export interface RecordPlace {
  /** A SQLite file or a postgres:// address. */
  place: string;
  folder: string;
}

/**
 * The whole shop as an archive, made in a thread into a file that is gone once it was sent. Who asked for it and
 * went away ends the making.
 */
export async function shopArchive(
  { place, folder }: RecordPlace,
  by: WrittenBy,
  task: TaskOptions,
): Promise<AsyncIterable<Uint8Array>> {
  const out = join(folder, `export-${newId()}.zip.part`);
  try {
    await runTask('writeShop', { place, out, ...by }, task);
  } catch (error) {
    rmSync(out, { force: true });
    throw error;
  }
  return sentAndGone(out);
}

async function* sentAndGone(file: string): AsyncGenerator<Uint8Array> {
  try {
    yield* createReadStream(file);
  } finally {
    rmSync(file, { force: true });
  }
}
