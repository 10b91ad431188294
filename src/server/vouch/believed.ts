import { createHash } from 'node:crypto';
import type { Selectable } from 'kysely';
import { attachmentType } from '../attachment-type.ts';
import { DamagedError } from '../errors.ts';
import type { StoredAttachment } from '../repository.ts';
import type { AttachmentsTable, RevisionsTable } from '../tables.ts';
import { attachmentSeal, revisionSeal } from './seals.ts';

/** A picture as it was stored: its hash is that of its bytes, its type what the bytes are. @throws DamagedError */
export function believedAttachment(row: Selectable<AttachmentsTable>): StoredAttachment {
  const { hash, bytes } = row;
  if (createHash('sha256').update(bytes).digest('hex') !== hash) throw new DamagedError(damagedPicture);
  const type = attachmentType(bytes);
  if (!type) throw new DamagedError('This attachment is no picture and no PDF, and is not given out');
  return { hash, type, bytes };
}

const damagedPicture =
  'This picture cannot be read as stored: the disk or the file is damaged. Press “Repair” on the shelf: it is taken from the newest good backup';

/** Whether what is noted of an attachment is what was stored. */
export function attachmentNoteHolds(row: Omit<Selectable<AttachmentsTable>, 'bytes'>): boolean {
  return row.seal === attachmentSeal(row);
}

export function revisionHolds(row: Selectable<RevisionsTable>): boolean {
  return row.seal === revisionSeal(row);
}

/** @throws DamagedError */
export function believedRevision(row: Selectable<RevisionsTable>): Selectable<RevisionsTable> {
  if (revisionHolds(row)) return row;
  throw new DamagedError(
    'A printed state of this build cannot be read as stored: the disk or the file is damaged. Press “Repair” on the shelf',
  );
}
