import { applyOperations, emptyDocument } from '../record/document.ts';
import { type FileAttachment, largestFile } from '../record/file-shape.ts';
import { buildFileOf, writeBuildFile } from '../record/file-write.ts';
import type { DocumentState } from '../record/operation.ts';
import { habitsOf } from '../record/shop-habits.ts';
import { DamagedError, NotFoundError } from './errors.ts';
import type { Keeper } from './keeper.ts';
import { attachmentHashes } from './take-build-file.ts';

/** The build as a file. Attachments that would make it too large to be read again are left out. */
export async function buildFileText(
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
export async function readableAttachment(keeper: Keeper, hash: string) {
  try {
    return await keeper.repository.attachment(hash);
  } catch (error) {
    if (error instanceof DamagedError) return undefined;
    throw error;
  }
}
