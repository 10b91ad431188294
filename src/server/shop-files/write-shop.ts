import { createHash } from 'node:crypto';
import { mkdirSync, renameSync, rmSync, writeFileSync } from 'node:fs';
import { dirname, join } from 'node:path';
import { setImmediate as breathe } from 'node:timers/promises';
import { Zip, ZipDeflate, ZipPassThrough } from 'fflate';
import { applyOperations, emptyDocument } from '../../record/document.ts';
import { layOut, valuesByRow } from '../../record/file-write.ts';
import type { DamageNote } from '../../record/record-api.ts';
import { DamagedError } from '../errors.ts';
import type { Repository } from '../repository.ts';
import { unreadable } from '../sql-operations.ts';
import { documentFormat, manifestName, type ShopManifest, shopFormat } from './shapes.ts';

export interface ShopFile {
  name: string;
  bytes: Uint8Array;
}
export interface WrittenBy {
  writtenBy: string;
  madeAt: string;
}

/** Every file of the shop, one at a time, the manifest last: only then is it known what there is. */
export async function* shopFiles(
  repository: Repository,
  by: WrittenBy,
  onProgress: (done: number, total: number) => void = () => undefined,
): AsyncGenerator<ShopFile> {
  const manifest: ShopManifest = { format: shopFormat, version: 1, ...by, files: [], attachments: [] };
  const noted = (file: ShopFile): ShopFile => {
    const sha256 = createHash('sha256').update(file.bytes).digest('hex');
    manifest.files.push({ name: file.name, bytes: file.bytes.length, sha256 });
    return file;
  };
  const leftOut: DamageNote[] = [];
  const [ids, notes] = [await repository.documentIds(), await repository.attachmentNotes()];
  let done = 0;
  const next = async () => {
    onProgress(++done, ids.length + notes.length);
    await breathe();
  };
  for (const id of ids) {
    const file = await unlessDamaged(() => documentFile(repository, id), { id, title: '' }, leftOut);
    if (file) yield noted(file);
    await next();
  }
  for (const { hash, addedAt } of notes) {
    const about = { id: hash, title: 'a picture' };
    const found = await unlessDamaged(() => repository.attachment(hash), about, leftOut);
    if (!found) continue;
    // What the bytes are, whatever was once noted of them.
    const { type, bytes } = found;
    manifest.attachments.push({ hash, type, addedAt });
    yield noted({ name: `attachments/${hash}.${extensionOf(type)}`, bytes });
    await next();
  }
  if (leftOut.length > 0) manifest.leftOut = leftOut;
  yield { name: manifestName, bytes: textBytes(manifest) };
}

/** What is damaged is left out and named; all else goes on. */
async function unlessDamaged<T>(
  read: () => Promise<T>,
  about: Pick<DamageNote, 'id' | 'title'>,
  leftOut: DamageNote[],
): Promise<T | undefined> {
  try {
    return await read();
  } catch (error) {
    if (!(error instanceof DamagedError) && !unreadable(error)) throw error;
    leftOut.push({ ...about, what: (error as Error).message });
    return undefined;
  }
}

/** @param folder must not be there yet; it appears under its name when it is whole */
export async function writeShopFolder(
  repository: Repository,
  folder: string,
  by: WrittenBy,
): Promise<number> {
  const part = `${folder}.part`;
  rmSync(part, { recursive: true, force: true });
  let count = 0;
  try {
    for await (const { name, bytes } of shopFiles(repository, by)) {
      const file = join(part, name);
      mkdirSync(dirname(file), { recursive: true, mode: 0o700 });
      writeFileSync(file, bytes, { mode: 0o600 });
      count++;
    }
    renameSync(part, folder);
    return count;
  } finally {
    rmSync(part, { recursive: true, force: true });
  }
}

/** The same as one .zip, in pieces as they are made. */
export async function* shopZip(
  repository: Repository,
  by: WrittenBy,
  onProgress?: (done: number, total: number) => void,
): AsyncGenerator<Uint8Array> {
  const ready: Uint8Array[] = [];
  const zip = new Zip((error, chunk) => {
    if (error) throw error;
    ready.push(chunk);
  });
  for await (const { name, bytes } of shopFiles(repository, by, onProgress)) {
    // Pictures are packed already.
    const entry = name.startsWith('attachments/')
      ? new ZipPassThrough(name)
      : new ZipDeflate(name, { level: 6 });
    zip.add(entry);
    entry.push(new Uint8Array(bytes), true);
    yield* ready.splice(0);
  }
  zip.end();
  yield* ready.splice(0);
}

async function documentFile(repository: Repository, id: string): Promise<ShopFile> {
  const summary = (await repository.find(id))!;
  if (summary.damaged) throw new DamagedError('What the shelf says of it is not what was stored');
  const history = await repository.operationsAfter(id, 0, summary.lastSeq);
  if (history.length < summary.lastSeq) throw new DamagedError('Changes of it are missing');
  const revisions = (await repository.revisions(id)).map(({ revision, seq, madeAt, engineVersion }) => ({
    revision,
    seq,
    madeAt,
    engineVersion,
  }));
  const { kind, gone, createdAt, updatedAt, title } = summary;
  const values = valuesByRow(applyOperations(emptyDocument(id, kind), history));
  const document = {
    format: documentFormat,
    version: 1,
    id,
    kind,
    gone,
    createdAt,
    updatedAt,
    values,
    history,
    revisions,
  };
  const folder = { build: 'builds/', ticket: 'repairs/', shop: '' }[kind];
  const name = kind === 'shop' ? 'shop' : [slugOf(title), id].filter((part) => part !== '').join('-');
  return { name: `${folder}${name}.json`, bytes: textBytes(document) };
}

function textBytes(value: unknown): Uint8Array {
  return new TextEncoder().encode(`${layOut(value, '')}\n`);
}

function slugOf(title: string): string {
  const plain = title.normalize('NFKD').replace(/[^A-Za-z0-9]+/g, '-');
  return plain.replace(/^-+|-+$/g, '').slice(0, 50);
}

function extensionOf(type: string): string {
  return (
    { 'image/jpeg': 'jpg', 'image/tiff': 'tif', 'application/pdf': 'pdf' }[type] ??
    /[a-z]{3,4}$/.exec(type)?.[0] ??
    'bin'
  );
}
