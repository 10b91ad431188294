import { closeSync, mkdirSync, openSync, readSync, statfsSync, statSync, writeSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { Unzip, UnzipInflate } from 'fflate';
import { ShopRefused } from './read-shop.ts';
import { fileName, largestDocument, manifestName } from './shapes.ts';

/**
 * What an archive may unpack to: text packs to a fortieth or so, a bomb to a thousandth; and never more than half of
 * what the disk has left.
 */
export const unpackLimits = {
  timesTheArchive: 50,
  leastBytes: 64 * 1024 ** 2,
  mostBytes: 8 * 1024 ** 3,
  entries: 200_000,
};

/**
 * Unpacks a shop's .zip into an empty folder. Every name must be one that a shop has; anything else, a name twice,
 * a file or a whole that grows beyond the limits, is refused before more of it is written.
 * @throws ShopRefused
 */
export function unpackShop(archive: string, folder: string, limits = unpackLimits): void {
  const byArchive = Math.max(limits.leastBytes, limits.timesTheArchive * statSync(archive).size);
  const mostBytes = Math.min(byArchive, limits.mostBytes, roomIn(folder) / 2);
  const seen = new Set<string>();
  const open: { left: number } = { left: 0 };
  let written = 0;
  const unzip = new Unzip((entry) => {
    if (entry.name !== manifestName && !fileName.test(entry.name))
      throw new ShopRefused(
        `The archive holds ${JSON.stringify(entry.name.slice(0, 80))}, which no shop has. It was not made by Fairbend`,
      );
    if (seen.has(entry.name.toLowerCase()))
      throw new ShopRefused(`The archive holds ${entry.name} twice. Export the shop again`);
    seen.add(entry.name.toLowerCase());
    if (seen.size > limits.entries)
      throw new ShopRefused(`The archive holds more than ${limits.entries} files`);
    const file = join(folder, entry.name);
    mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
    const out = openSync(file, 'wx', 0o600);
    open.left++;
    let size = 0;
    let closed = false;
    const close = () => {
      if (!closed) closeSync(out);
      closed = true;
    };
    entry.ondata = (error, chunk, last) => {
      size += chunk?.length ?? 0;
      written += chunk?.length ?? 0;
      if (error || size > largestDocument || written > mostBytes) {
        close();
        if (error instanceof ShopRefused) throw error;
        throw new ShopRefused(
          error
            ? cutShort
            : `${entry.name} unpacks to more than an archive of this size holds. It was not made by Fairbend`,
        );
      }
      writeSync(out, chunk);
      if (!last) return;
      close();
      open.left--;
    };
    entry.start();
  });
  unzip.register(UnzipInflate);
  pushAll(archive, unzip);
  if (seen.size === 0) throw new ShopRefused('This file is no archive of a shop made by Fairbend');
  if (open.left > 0) throw new ShopRefused(cutShort);
}

function roomIn(folder: string): number {
  const { bavail, bsize } = statfsSync(folder);
  return bavail * bsize;
}

const cutShort = 'The archive is cut short or damaged. Copy it again';
/** Small enough that a piece that unpacks a thousandfold still fits into memory. */
const chunkBytes = 64 * 1024;

function pushAll(archive: string, unzip: Unzip): void {
  const file = openSync(archive, 'r');
  try {
    const { size } = statSync(archive);
    for (let at = 0; at < size; ) {
      const chunk = new Uint8Array(Math.min(chunkBytes, size - at));
      const read = readSync(file, chunk, 0, chunk.length, at);
      at += read;
      unzip.push(chunk.subarray(0, read), at >= size || read === 0);
      if (read === 0) return;
    }
  } catch (error) {
    throw error instanceof ShopRefused ? error : new ShopRefused(cutShort, { cause: error });
  } finally {
    closeSync(file);
  }
}
