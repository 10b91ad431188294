import { closeSync, fstatSync, lstatSync, openSync, readFileSync } from 'node:fs';
import { join } from 'node:path';
import { emptyDocument } from '../../record/document.ts';
import type { Operation, StoredOperation } from '../../record/operation.ts';
import { renumbered } from '../../record/renumber.ts';
import { validateOperation } from '../../record/validate.ts';
import { attachmentType } from '../attachment-type.ts';
import { bareAttachment, hashOf } from '../bare-attachment.ts';
import { RefusedError } from '../errors.ts';
import { frozenStates } from '../freeze.ts';
import type { StoredAttachment, WholeDocument } from '../repository.ts';
import { withHashes } from '../take-build-file.ts';
import {
  documentShape,
  largestAttachment,
  largestManifest,
  manifestName,
  manifestShape,
  type ShopManifest,
} from './shapes.ts';

/** The files are no shop, or not a whole one; nothing was stored. */
export class ShopRefused extends Error {}

/** A shop's folder, its manifest read; every file is checked as it is taken. */
export class ShopFolder {
  readonly manifest: ShopManifest;
  /** Names of pictures in the files, and as they are kept; filled by reading the attachments. */
  readonly renamed = new Map<string, string>();
  private readonly folder: string;

  constructor(folder: string) {
    this.folder = folder;
    this.manifest = readManifest(join(folder, manifestName));
  }

  /** All documents in the order of the manifest. @throws ShopRefused */
  *documents(): Generator<WholeDocument> {
    const ids = new Set<string>();
    for (const { name } of this.manifest.files) {
      if (name.startsWith('attachments/')) continue;
      const document = readDocument(this.take(name), name, this.renamed);
      if (ids.has(document.id))
        throw new ShopRefused(`${name}: document ${document.id} is there twice. Take one away`);
      ids.add(document.id);
      yield document;
    }
  }

  *attachments(): Generator<StoredAttachment & { addedAt: string }> {
    const named = new Map(this.manifest.files.map((file) => [file.name.split('.')[0], file.name]));
    for (const { hash, addedAt } of this.manifest.attachments) {
      const name = named.get(`attachments/${hash}`);
      if (!name)
        throw new ShopRefused(
          `${manifestName}: attachment ${hash.slice(0, 12)} has no file. Export the shop again`,
        );
      const bytes = this.take(name);
      if (hashOf(bytes) !== hash) throw new ShopRefused(`${name} is not what its name says. Copy it again`);
      const attachment = bareOrOld(bytes, hash, name);
      this.renamed.set(hash, attachment.hash);
      yield { ...attachment, addedAt };
    }
  }

  /** The bytes of a file as the manifest has them. Links are not followed. */
  private take(name: string): Uint8Array {
    const said = this.manifest.files.find((file) => file.name === name)!;
    const bytes = readRegular(join(this.folder, name), name, said.bytes);
    if (bytes.length !== said.bytes || hashOf(bytes) !== said.sha256)
      throw new ShopRefused(
        `${name} is not the file the manifest names: it was changed or cut short. Copy the folder again; a build changed by hand is opened from the shelf instead`,
      );
    return bytes;
  }
}

function readManifest(file: string): ShopManifest {
  const text = new TextDecoder().decode(readRegular(file, manifestName, largestManifest));
  const json = parse(text, manifestName);
  const version = (json as { version?: unknown })?.version;
  if (typeof version === 'number' && version > 1)
    throw new ShopRefused('This shop was exported by a newer Fairbend. Update this one');
  const read = manifestShape.safeParse(json);
  if (!read.success) {
    const { path, message } = read.error.issues[0];
    throw new ShopRefused(
      `${manifestName} is no list of a shop's files: ${path.join('/')} ${message}. Export the shop again`,
    );
  }
  const names = new Set(read.data.files.map(({ name }) => name.toLowerCase()));
  if (names.size !== read.data.files.length)
    throw new ShopRefused(`${manifestName} names a file twice. Export the shop again`);
  return read.data;
}

function readDocument(bytes: Uint8Array, name: string, renamed: ReadonlyMap<string, string>): WholeDocument {
  const read = documentShape.safeParse(parse(new TextDecoder('utf-8', { fatal: true }).decode(bytes), name));
  if (!read.success) {
    const { path, message } = read.error.issues[0];
    throw new ShopRefused(`${name}: ${path.join('/')} ${message}. Export the shop again`);
  }
  const { id, kind, gone, createdAt, updatedAt, revisions } = read.data;
  const told = read.data.history.map((entry, index) => storedOperation(entry, kind, index, name));
  const history = renumbered(told).history.map((operation) => withHashes(operation, renamed));
  return {
    id,
    kind,
    gone,
    createdAt,
    updatedAt,
    history,
    revisions: frozenStates(emptyDocument(id, kind), history, revisions),
  };
}

function storedOperation(
  { seq, receivedAt, ...operation }: Record<string, unknown>,
  kind: WholeDocument['kind'],
  index: number,
  name: string,
): StoredOperation {
  if (seq !== index + 1)
    throw new ShopRefused(
      `${name}: change ${index + 1} of its history has the number ${String(seq)}. Export the shop again`,
    );
  const [finding] = validateOperation(kind, operation);
  if (finding) throw new ShopRefused(`${name}: change ${index + 1}: ${finding.message}`);
  return { ...(operation as unknown as Operation), seq, receivedAt: receivedAt as string };
}

/** As uploads are taken; kinds an older Fairbend took stay as they are. */
function bareOrOld(bytes: Uint8Array, hash: string, name: string): StoredAttachment {
  const type = attachmentType(bytes);
  if (type && /^image\/(tiff|heic|avif)$/.test(type)) return { hash, type, bytes };
  try {
    return bareAttachment(new Uint8Array(bytes));
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    throw new ShopRefused(`${name}: ${error.message}. Take it out of the manifest and the folder`);
  }
}

function readRegular(file: string, name: string, most: number): Uint8Array {
  const status = lstatSync(file, { throwIfNoEntry: false });
  if (!status) throw new ShopRefused(`${name} is missing. Copy the folder again`);
  if (!status.isFile()) throw new ShopRefused(`${name} is no plain file. Put the file itself there`);
  const opened = openSync(file, 'r');
  try {
    const { size } = fstatSync(opened);
    if (size > Math.max(most, largestAttachment))
      throw new ShopRefused(
        `${name} has ${size} bytes, more than a shop's file ever has. Look whether it is the right one`,
      );
    return new Uint8Array(readFileSync(opened));
  } finally {
    closeSync(opened);
  }
}

function parse(text: string, name: string): unknown {
  try {
    return JSON.parse(text);
  } catch (error) {
    throw new ShopRefused(
      `${name} is no JSON, or only a part of one (${(error as Error).message}). Copy it again`,
    );
  }
}
