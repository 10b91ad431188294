import { existsSync, lstatSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { setImmediate as breath } from 'node:timers/promises';
import type { Repository } from '../repository.ts';
import { findingOf } from '../vouch/check-whole.ts';
import { ShopFolder, ShopRefused } from './read-shop.ts';
import { unpackShop } from './unpack-shop.ts';

export interface ImportedShop {
  documents: number;
  operations: number;
  attachments: number;
}

/**
 * Takes a whole shop, a folder or a .zip, into an empty record: all of it is read and checked first, then stored in
 * one transaction. @throws ShopRefused; then nothing was stored
 */
export async function importShop(
  repository: Repository,
  source: string,
  scratch = tmpdir(),
  onProgress: (done: number, total: number) => void = () => undefined,
): Promise<ImportedShop> {
  if (!existsSync(source)) throw new ShopRefused(`There is no file or folder ${source}. Check the name`);
  const standing = (await repository.documentIds()).length;
  if (standing > 0)
    throw new ShopRefused(
      `The record holds ${standing} documents already, and an import would mix two shops. Give an empty data folder (--data FOLDER)`,
    );
  if (lstatSync(source).isDirectory()) return takeIn(repository, new ShopFolder(source), onProgress);
  const unpacked = mkdtempSync(join(scratch, 'fairbend-import-'));
  try {
    unpackShop(source, unpacked);
    return await takeIn(repository, new ShopFolder(unpacked), onProgress);
  } finally {
    rmSync(unpacked, { recursive: true, force: true });
  }
}

/** Every file is read twice: once to check them all, once to store them. */
async function takeIn(
  repository: Repository,
  folder: ShopFolder,
  onProgress: (done: number, total: number) => void,
): Promise<ImportedShop> {
  const counts = { documents: 0, operations: 0, attachments: 0 };
  const total = 2 * folder.manifest.files.length;
  let done = 0;
  const tick = () => onProgress(++done, total);
  // Pictures first: one that is kept under another name is named so in the documents.
  for await (const _ of unhurried(folder.attachments(), tick)) counts.attachments++;
  for await (const document of unhurried(folder.documents(), tick)) {
    const finding = findingOf(document);
    if (finding) throw new ShopRefused(`Document ${document.id}: ${finding}. Export the shop again`);
    counts.documents++;
    counts.operations += document.history.length;
  }
  await repository.addWhole(unhurried(folder.documents(), tick), unhurried(folder.attachments(), tick));
  return counts;
}

/** One after the other, with room between them for whatever else this process has to answer. */
async function* unhurried<T>(items: Iterable<T>, tick: () => void): AsyncGenerator<T> {
  for (const item of items) {
    tick();
    await breath();
    yield item;
  }
}
