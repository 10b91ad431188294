import { createReadStream, rmSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { newId } from '../keeper.ts';
import { runTask, type TaskOptions } from '../thread/run-task.ts';
import type { WrittenBy } from './write-shop.ts';

/**
 * The whole shop as an archive, made in a thread beside the record and gone once it was sent. Who asked for it and
 * went away ends the making.
 */
export async function shopArchive(
  recordFile: string,
  by: WrittenBy,
  task: TaskOptions,
): Promise<AsyncIterable<Uint8Array>> {
  const out = join(dirname(recordFile), `export-${newId()}.zip.part`);
  try {
    await runTask('writeShop', { file: recordFile, out, ...by }, task);
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
