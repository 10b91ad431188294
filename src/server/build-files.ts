import { againChanges } from '../record/again.ts';
import type { DocumentSummary, ImportAnswer } from '../record/api.ts';
import { allRows, applyOperations, emptyDocument } from '../record/document.ts';
import { readBuildFile } from '../record/file-read.ts';
import { type FileAttachment, largestFile } from '../record/file-shape.ts';
import { buildFileOf, writeBuildFile } from '../record/file-write.ts';
import {
  type Change,
  type DocumentState,
  type Objection,
  type Operation,
  pathOf,
} from '../record/operation.ts';
import type { FieldValue } from '../record/schema.ts';
import { habitsOf } from '../record/shop-habits.ts';
import { type BareAttachment, bareAttachment, hashOf } from './bare-attachment.ts';
import { DamagedError, NotFoundError, RefusedError } from './errors.ts';
import { frozen } from './freeze.ts';
import { type Keeper, newId } from './keeper.ts';

/** The build as a file. Attachments that would make it too large to be read again are left out. */
export async function exportBuild(
  keeper: Keeper,
  id: string,
  { attachments, writtenBy }: { attachments: boolean; writtenBy: string },
): Promise<string> {
  const { kind } = await keeper.findOrThrow(id);
  if (kind !== 'build') throw new NotFoundError('Only builds are exported to files');
  const history = await keeper.history(id);
  const revisions = (await keeper.repository.revisions(id)).map(({ document: _, ...revision }) => revision);
  const state = applyOperations(emptyDocument(id, 'build'), history);
  const held = attachments ? await heldAttachments(keeper, state) : [];
  const habits = habitsOf(state, await keeper.state((await keeper.shop()).id));
  return writeBuildFile(buildFileOf({ history, revisions, attachments: held, habits, writtenBy }));
}

/** A new build from a file. @throws RefusedError; then nothing was stored */
export async function importBuild(keeper: Keeper, text: string, id = newId()): Promise<ImportAnswer> {
  const result = readBuildFile(text, keeper.timestamp());
  if (result.status === 'refused') throw new RefusedError(result.findings);
  const { revisions, attachments, notes } = result.build;
  const held = attachments.map(takenIn);
  const findings = held.flatMap((entry) => ('message' in entry ? [entry] : []));
  if (findings.length > 0) throw new RefusedError(findings);
  const bare = held as { named: string; attachment: BareAttachment }[];
  const renamed = new Map(bare.map(({ named, attachment }) => [named, attachment.hash]));
  const stripped = bare.filter(({ named, attachment }) => named !== attachment.hash).length;
  const operations = result.build.operations.map((operation) => withHashes(operation, renamed));
  const at = keeper.timestamp();
  for (const { attachment } of bare) await keeper.repository.addAttachment(attachment, at);
  const document = await keeper.createWith('build', operations, id);
  for (const { seq, madeAt, engineVersion } of revisions) {
    const then = applyOperations(emptyDocument(id, 'build'), operations.slice(0, seq));
    await keeper.repository.addRevision(frozen(id, then, { seq, madeAt, engineVersion }));
  }
  const state = applyOperations(emptyDocument(id, 'build'), operations);
  return {
    document,
    attachmentsMissing: await missingAttachments(keeper, state),
    notes: stripped > 0 ? [...notes, strippedWords(stripped)] : notes,
  };
}

function strippedWords(count: number): string {
  const pictures = count === 1 ? 'One picture' : `${count} pictures`;
  return `${pictures} told where, when or with what it was taken. That was taken out; the picture itself is the same`;
}

/** A picture that was changed on its way in has another name; the changes that name it follow. */
export function withHashes<T extends Operation>(operation: T, renamed: ReadonlyMap<string, string>): T {
  const follow = (value: FieldValue) => (typeof value === 'string' ? (renamed.get(value) ?? value) : value);
  return { ...operation, old: follow(operation.old), value: follow(operation.value) };
}

/** A new build of the builder's own with the values of another; its history begins here. */
export async function copyBuild(keeper: Keeper, id: string): Promise<DocumentSummary> {
  const { kind, title } = await keeper.findOrThrow(id);
  if (kind !== 'build') throw new NotFoundError('Only builds are copied');
  const left = /^(prints\/|about\/-\/(demo|createdAt|title)$)/;
  const changes = [...(await keeper.state(id)).cells]
    .filter(([key]) => !left.test(key))
    .map(([key, cell]): Change => ({ path: pathOf(key), value: cell.value }));
  const copied = `${title.slice(0, 180)} (copy)`.trim();
  return keeper.createFrom('build', [...changes, { path: ['about', '-', 'title'], value: copied }]);
}

/** A new build that repeats another on a new blank: what was chosen is carried over, what was measured is not. */
export async function repeatBuild(keeper: Keeper, id: string): Promise<DocumentSummary> {
  const { kind, title } = await keeper.findOrThrow(id);
  if (kind !== 'build') throw new NotFoundError('Only builds are repeated');
  return keeper.createFrom('build', againChanges(await keeper.state(id), { id, title }));
}

async function heldAttachments(keeper: Keeper, state: DocumentState): Promise<FileAttachment[]> {
  const held: FileAttachment[] = [];
  let size = 0;
  for (const hash of attachmentHashes(state)) {
    const found = await readableAttachment(keeper, hash);
    if (!found) continue;
    const base64 = Buffer.from(found.bytes).toString('base64');
    size += base64.length;
    // Half the limit: the history needs room too.
    if (size < largestFile / 2) held.push({ hash, type: found.type, base64 });
  }
  return held;
}

/** A damaged picture does not keep the build from being saved; who opens the file is told that it is missing. */
async function readableAttachment(keeper: Keeper, hash: string) {
  try {
    return await keeper.repository.attachment(hash);
  } catch (error) {
    if (error instanceof DamagedError) return undefined;
    throw error;
  }
}

async function missingAttachments(keeper: Keeper, state: DocumentState): Promise<string[]> {
  const missing: string[] = [];
  for (const hash of attachmentHashes(state))
    if (!(await readableAttachment(keeper, hash))) missing.push(hash);
  return missing;
}

function attachmentHashes(state: DocumentState): string[] {
  const named = allRows(state, 'attachments').map((row) => row.fields.content);
  return [...new Set(named.filter((hash) => typeof hash === 'string'))];
}

function takenIn(
  { hash, base64 }: FileAttachment,
  index: number,
): { named: string; attachment: BareAttachment } | Objection {
  const path = `attachments/${index}`;
  const bytes = new Uint8Array(Buffer.from(base64, 'base64'));
  if (hashOf(bytes) !== hash)
    return { path, message: `Attachment ${index + 1} is not what its hash says. Export the file again` };
  try {
    return { named: hash, attachment: bareAttachment(bytes, path) };
  } catch (error) {
    if (!(error instanceof RefusedError)) throw error;
    return { path, message: `Attachment ${index + 1}: ${error.message}` };
  }
}
