import type { Context } from 'hono';
import type { z } from 'zod';
import { RefusedError, TooLargeError } from '../errors.ts';

/** Bytes that are nothing to hold. */
const smallBody = 64 * 1024;

/** The body's bytes. @throws TooLargeError as soon as it is known to be too large, without reading on */
export async function readBytes(c: Context, most: number, what: string): Promise<Uint8Array<ArrayBuffer>> {
  const tooLarge = () =>
    new TooLargeError(
      `${what} is larger than ${sizeWords(most)}. Look whether it is the right one, or make it smaller`,
    );
  const said = Number(c.req.header('content-length') ?? Number.NaN);
  if (said > most) throw tooLarge();
  // No longer than it says it is, by Node's reading of HTTP: taken in one piece, which costs a fraction.
  if (said <= smallBody) return new Uint8Array(await c.req.arrayBuffer());
  const chunks: Uint8Array[] = [];
  let size = 0;
  for await (const chunk of c.req.raw.body ?? []) {
    size += chunk.length;
    if (size > most) throw tooLarge();
    chunks.push(chunk);
  }
  const bytes = new Uint8Array(size);
  let at = 0;
  for (const chunk of chunks) {
    bytes.set(chunk, at);
    at += chunk.length;
  }
  return bytes;
}

function sizeWords(bytes: number): string {
  return bytes < 1024 ** 2 ? `${Math.floor(bytes / 1024)} kB` : `${Math.round(bytes / 1024 ** 2)} MB`;
}

/** The body's text. @throws RefusedError when it is not UTF-8 */
export async function readText(c: Context, most: number, what: string): Promise<string> {
  const bytes = await readBytes(c, most, what);
  try {
    return new TextDecoder('utf-8', { fatal: true }).decode(bytes);
  } catch {
    throw new RefusedError([{ path: '', message: `${what} is not UTF-8 text. Save it as UTF-8` }]);
  }
}

/** The body as JSON of the given shape. @throws RefusedError, TooLargeError */
export async function readJson<T>(c: Context, shape: z.ZodType<T>, most: number): Promise<T> {
  const text = await readText(c, most, 'The request');
  let json: unknown;
  try {
    json = JSON.parse(text);
  } catch (error) {
    throw new RefusedError([{ path: '', message: `The request is not JSON: ${(error as Error).message}` }]);
  }
  const parsed = shape.safeParse(json);
  if (parsed.success) return parsed.data;
  throw new RefusedError(
    parsed.error.issues.slice(0, 5).map((issue) => ({
      path: issue.path.join('/'),
      message: `${issue.path.join('/') || 'The request'}: ${issue.message}`,
    })),
  );
}
