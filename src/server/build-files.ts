import { setImmediate as breathe } from 'node:timers/promises';
import { againChanges } from '../record/again.ts';
import type { DocumentSummary, ImportAnswer } from '../record/api.ts';
import { type Change, type Operation, pathOf } from '../record/operation.ts';
import { buildFileText, readableAttachment } from './build-file-text.ts';
import { NotFoundError, RefusedError } from './errors.ts';
import { type Keeper, newId } from './keeper.ts';
import { assertRoom } from './space-limit.ts';
import type { TakenBuild } from './take-build-file.ts';
import { runTask, type TaskOptions } from './thread/run-task.ts';

/**
 * The build as a file, made in a thread of its own.
 * @param place the record's SQLite file or postgres:// address; without one it is made in this thread
 */
export async function exportBuild(
  keeper: Keeper,
  id: string,
  options: { attachments: boolean; writtenBy: string },
  place?: string,
  task?: TaskOptions,
): Promise<string> {
  // Made now where it is missing: the thread only reads.
  await keeper.shop();
  return place ? runTask('writeBuild', { place, id, ...options }, task) : buildFileText(keeper, id, options);
}

/** A new build from a file, read in a thread of its own. @throws RefusedError; then nothing was stored */
export async function importBuild(
  keeper: Keeper,
  text: string,
  { signal, onProgress }: TaskOptions = {},
): Promise<ImportAnswer> {
  const [id, at] = [newId(), keeper.timestamp()];
  const taken = await runTask('readBuild', { text, id, at }, { signal });
  if ('findings' in taken) throw new RefusedError(taken.findings);
  await assertRoom(keeper, bytesOf(taken));
  const operations: Operation[] = [];
  for (const piece of taken.pieces) {
    operations.push(...(JSON.parse(piece) as Operation[]));
    await breathe();
  }
  const added: string[] = [];
  for (const attachment of taken.attachments)
    if (await keeper.repository.addAttachment(attachment, at)) added.push(attachment.hash);
  const document = await keeper
    .createWith('build', operations, id, { signal, onProgress })
    .catch(async (error: unknown) => {
      await keeper.repository.dropUnused(added);
      throw error;
    });
  for (const revision of taken.revisions) await keeper.repository.addRevision(revision);
  const attachmentsMissing = await missingAttachments(keeper, taken.hashes);
  return { document, attachmentsMissing, notes: taken.notes };
}

/** About what it takes once it is stored. */
function bytesOf({ pieces, attachments }: TakenBuild): number {
  const texts = pieces.reduce((sum, piece) => sum + piece.length, 0);
  return attachments.reduce((sum, { bytes }) => sum + bytes.length, texts);
}

/** A new build of the builder's own with the values of another; its history begins here. */
export async function copyBuild(keeper: Keeper, id: string): Promise<DocumentSummary> {
  const { kind, title } = await keeper.findOrThrow(id);
  if (kind !== 'build') throw new NotFoundError('Only builds are copied');
  const left = /^(prints\/|about\/-\/(demo|createdAt|title|copyOf)$)/;
  const changes = [...(await keeper.state(id)).cells]
    .filter(([key]) => !left.test(key))
    .map(([key, cell]): Change => ({ path: pathOf(key), value: cell.value }));
  return keeper.createFrom('build', [
    ...changes,
    { path: ['about', '-', 'title'], value: title },
    { path: ['about', '-', 'copyOf'], value: id },
  ]);
}

/** A new build that repeats another on a new blank: what was chosen is carried over, what was measured is not. */
export async function repeatBuild(keeper: Keeper, id: string): Promise<DocumentSummary> {
  const { kind, title } = await keeper.findOrThrow(id);
  if (kind !== 'build') throw new NotFoundError('Only builds are repeated');
  return keeper.createFrom('build', againChanges(await keeper.state(id), { id, title }));
}

async function missingAttachments(keeper: Keeper, hashes: readonly string[]): Promise<string[]> {
  const missing: string[] = [];
  for (const hash of hashes) if (!(await readableAttachment(keeper, hash))) missing.push(hash);
  return missing;
}
