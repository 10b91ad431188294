/**
 * JSON lines in, JSON lines out, in order, each answered as soon as it is whole: the reader need not wait for
 * the end of input.
 */
import { StringDecoder } from 'node:string_decoder';
import { answerRequest } from './answer-request.ts';
import { refuse } from './refusal.ts';

interface LineProtocolOptions {
  /** Writes one answer with its line end; awaited, so that a slow reader slows us down. */
  write: (line: string) => void | Promise<void>;
  /** Longest line taken, in characters. */
  longestLine?: number;
}

/** 0, or 2 where there was input and not a line of it was JSON. Empty input is no error. */
export async function runLineProtocol(
  input: AsyncIterable<Uint8Array | string>,
  { write, longestLine = 64 * 1024 ** 2 }: LineProtocolOptions,
): Promise<0 | 2> {
  const seen = { lines: 0, json: 0 };
  for await (const line of linesOf(input, longestLine)) {
    const text = line.text.replace(/^\uFEFF/, '').trim();
    if (text === '' && !line.cut) continue;
    seen.lines++;
    const { isJson, answer } = await answerLine(text, line.cut);
    if (isJson) seen.json++;
    await write(`${JSON.stringify(answer)}\n`);
  }
  return seen.lines > 0 && seen.json === 0 ? 2 : 0;
}

async function answerLine(text: string, cut: boolean): Promise<{ isJson: boolean; answer: object }> {
  if (cut) return { isJson: false, answer: refuse([{ path: '', message: 'the line is too long' }]) };
  try {
    return { isJson: true, answer: await answerRequest(JSON.parse(text)) };
  } catch (error) {
    const message = `the line is no JSON (${error instanceof Error ? error.message : error}); write one request as one line`;
    return { isJson: false, answer: refuse([{ path: '', message }]) };
  }
}

/** Lines as they come; one longer than allowed is given as its beginning, marked cut, and the rest of it dropped. */
async function* linesOf(input: AsyncIterable<Uint8Array | string>, longest: number) {
  const decoder = new StringDecoder('utf8');
  let rest = '';
  let dropping = false;
  for await (const chunk of input) {
    const pieces = (typeof chunk === 'string' ? chunk : decoder.write(Buffer.from(chunk))).split('\n');
    for (const [index, piece] of pieces.entries()) {
      const ends = index < pieces.length - 1;
      if (!dropping) rest += piece;
      if (!dropping && rest.length > longest) {
        yield { text: rest.slice(0, 100), cut: true };
        dropping = true;
      } else if (!dropping && ends) yield { text: rest, cut: false };
      if (ends) {
        rest = '';
        dropping = false;
      }
    }
  }
  rest += decoder.end();
  if (!dropping && rest !== '') yield { text: rest, cut: false };
}
