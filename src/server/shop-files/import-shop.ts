import { existsSync, lstatSync, mkdtempSync, rmSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import type { Repository } from '../repository.ts';
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
): Promise<ImportedShop> {
  if (!existsSync(source)) throw new ShopRefused(`There is no file or folder ${source}. Check the name`);
  const standing = (await repository.documentIds()).length;
  if (standing > 0)
    throw new ShopRefused(
      `The record holds ${standing} documents already, and an import would mix two shops. Give an empty data folder (--data FOLDER)`,
    );
  if (lstatSync(source).isDirectory()) return takeIn(repository, new ShopFolder(source));
  const unpacked = mkdtempSync(join(scratch, 'fairbend-import-'));
  try {
    unpackShop(source, unpacked);
    return await takeIn(repository, new ShopFolder(unpacked));
  } finally {
    rmSync(unpacked, { recursive: true, force: true });
  }
}

async function takeIn(repository: Repository, folder: ShopFolder): Promise<ImportedShop> {
  const counts = { documents: 0, operations: 0, attachments: 0 };
  for (const { history } of folder.documents()) {
    counts.documents++;
    counts.operations += history.length;
  }
  for (const _ of folder.attachments()) counts.attachments++;
  await repository.addWhole(folder.documents(), folder.attachments());
  return counts;
}
