import type { Context } from 'hono';
import type { ContentfulStatusCode } from 'hono/utils/http-status';
import type { Refusal } from '../record/api.ts';
import { DatabaseTrouble, troubleOf } from './database-trouble.ts';
import { ConflictError, DamagedError, NotFoundError, RefusedError, TooLargeError } from './errors.ts';

/** The one place that makes an HTTP answer of an error. */
export function answerError(error: unknown, c: Context): Response {
  // Nobody is there to hear it, and a log that strangers can fill is of no use.
  if ((error as { code?: unknown }).code === 'ECONNRESET' && (error as Error).message === 'aborted')
    return c.json({ message: 'The request ended before all of it was sent', findings: [] }, 400);
  const { status, refusal } = refusalFor(error);
  if (status >= 500 && !(error instanceof DamagedError)) console.error(error);
  return c.json(refusal, status);
}

function refusalFor(error: unknown): { status: ContentfulStatusCode; refusal: Refusal } {
  const trouble = troubleOf(error, 'of this record');
  const status = statusOf(trouble ?? error);
  const findings = error instanceof RefusedError ? error.findings : [];
  const message =
    status === 500
      ? 'The server made a mistake; nothing of this request was stored. Its window shows the details'
      : (trouble ?? (error as Error)).message;
  return { status, refusal: { message, findings } };
}

function statusOf(error: unknown): ContentfulStatusCode {
  if (error instanceof RefusedError) return 422;
  if (error instanceof NotFoundError) return 404;
  if (error instanceof ConflictError) return 409;
  if (error instanceof TooLargeError) return 413;
  // The page keeps its edits and sends them again: once the document is repaired they go through.
  if (error instanceof DamagedError) return 503;
  if (error instanceof DatabaseTrouble) return error.kind === 'full' ? 507 : 503;
  return 500;
}
