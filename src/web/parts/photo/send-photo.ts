import { stripPicture } from '../../../image/strip/strip-picture.ts';
import type { AttachmentAnswer } from '../../../record/api.ts';
import type { Change } from '../../../record/operation.ts';
import { rowChanges } from '../../../record/operation.ts';
import { sentenceOf } from '../../../words/sentence.ts';
import { siWriter } from '../../../words/writer.ts';
import { ApiError } from '../../store/api.ts';
import { api } from '../../store/open-document.ts';

/** A picture on the server, nothing but the picture. */
export interface SentPhoto extends AttachmentAnswer {
  name: string;
}

/**
 * Sends a picture. What tells where and with what it was taken leaves this device only where it could not be
 * taken out here; the server takes it out in any case. A kind the server does not take is made a JPEG by the
 * browser. Rejects with a sentence that names the picture.
 */
export async function sendPhoto(file: File): Promise<SentPhoto> {
  const name = file.name.slice(0, 200) || 'picture';
  try {
    const answer = await api.addAttachment(await bareFile(file));
    return { ...answer, name };
  } catch (error) {
    const reason = error instanceof Error ? error.message : String(error);
    const words = `${name} was not added: ${reason.replace(/^Not taken: /, '').replace(/\.$/, '')}`;
    throw new Error(words, { cause: error });
  }
}

/** The picture is good; the server was not there to take it. */
export function isServerAway(error: unknown): boolean {
  const cause = error instanceof Error ? error.cause : undefined;
  return cause instanceof ApiError && (cause.status === 0 || cause.status >= 500);
}

const known = /^(\xff\xd8\xff|\x89PNG|RIFF....WEBP)/s;
/** As the server's own limit. */
const largestBytes = 64 * 1024 ** 2;

async function bareFile(file: File): Promise<Blob> {
  if (file.size === 0) throw new Error('it is empty');
  if (file.size > largestBytes) {
    throw new Error(
      `it has ${Math.round(file.size / 1024 ** 2)} MB, at most 64 are taken; set the camera to a smaller picture`,
    );
  }
  const head = String.fromCharCode(...new Uint8Array(await file.slice(0, 16).arrayBuffer()));
  if (!known.test(head)) return converted(file);
  const stripped = stripPicture(new Uint8Array(await file.arrayBuffer()));
  if (stripped.status === 'refused') throw new Error(sentenceOf(stripped.findings[0], siWriter));
  return new Blob([stripped.bytes], { type: stripped.type });
}

/** Drawn by the browser and kept as a JPEG of high quality: every pixel's place stays, its value nearly. */
async function converted(file: Blob): Promise<Blob> {
  const foreign = (await isHeic(file))
    ? 'it is a HEIC picture, which this browser cannot show; set the camera to JPEG (“most compatible”), or take it with the button here'
    : 'it is no picture that this browser can show; save it as JPEG, PNG or WebP';
  const bitmap = await createImageBitmap(file).catch(() => undefined);
  if (!bitmap) throw new Error(foreign);
  const canvas = document.createElement('canvas');
  canvas.width = bitmap.width;
  canvas.height = bitmap.height;
  canvas.getContext('2d')?.drawImage(bitmap, 0, 0);
  bitmap.close();
  const jpeg = await new Promise<Blob | null>((done) => canvas.toBlob(done, 'image/jpeg', 0.95));
  if (!jpeg) throw new Error('it is too large for this browser to convert; set the camera to JPEG');
  return jpeg;
}

async function isHeic(file: Blob): Promise<boolean> {
  const head = String.fromCharCode(...new Uint8Array(await file.slice(4, 12).arrayBuffer()));
  return /^ftyp(hei|hev|mif|msf)/.test(head);
}

/** The record's rows of a picture that was sent. */
export function photoChanges(
  sent: SentPhoto,
  to: { test: string; order: number; takenBy: string; ids: { attachment: string; photo: string } },
): Change[] {
  const { hash, type, name, widthPx, heightPx } = sent;
  return [
    ...rowChanges('attachments', to.ids.attachment, { content: hash, name, type }),
    ...rowChanges('loadPhotos', to.ids.photo, {
      order: to.order,
      test: to.test,
      attachment: to.ids.attachment,
      part: 'whole',
      takenBy: to.takenBy,
      widthPx: widthPx ?? null,
      heightPx: heightPx ?? null,
    }),
  ];
}
