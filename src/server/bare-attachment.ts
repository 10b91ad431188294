import { createHash } from 'node:crypto';
import { stripPicture } from '../image/strip/strip-picture.ts';
import { sentenceOf } from '../words/sentence.ts';
import { siWriter } from '../words/writer.ts';
import { attachmentType } from './attachment-type.ts';
import { RefusedError } from './errors.ts';

export interface BareAttachment {
  hash: string;
  type: string;
  bytes: Uint8Array<ArrayBuffer>;
  /** Of a picture. */
  size?: { widthPx: number; heightPx: number };
}

/**
 * What is kept of the bytes of a picture or paper, whichever way they come: of a picture nothing but the picture.
 * @throws RefusedError
 */
export function bareAttachment(sent: Uint8Array<ArrayBuffer>, path = 'attachment'): BareAttachment {
  const refuse = (message: string) => new RefusedError([{ path, message }]);
  const type = attachmentType(sent);
  if (!type) throw refuse('The attachment is no picture and no PDF. Save it as JPEG, PNG, WebP or PDF');
  if (type === 'application/pdf') return { hash: hashOf(sent), type, bytes: sent };
  if (!/^image\/(jpeg|png|webp)$/.test(type)) {
    const kind = type.slice(6).toUpperCase();
    throw refuse(
      `This is a ${kind} picture, and the place it was taken at cannot be taken out of it here. Set the camera to JPEG, or save the picture as JPEG, PNG or WebP`,
    );
  }
  const stripped = stripPicture(sent);
  if (stripped.status === 'refused') throw refuse(`Not taken: ${sentenceOf(stripped.findings[0], siWriter)}`);
  const { bytes, widthPx, heightPx } = stripped;
  return { hash: hashOf(bytes), type, bytes, size: { widthPx, heightPx } };
}

export function hashOf(bytes: Uint8Array): string {
  return createHash('sha256').update(bytes).digest('hex');
}
