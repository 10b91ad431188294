import type { Finding } from '../engine/finding.ts';
import { lengthsInWords } from '../engine/units/lengths-in-words.ts';
import { benchSentences } from './findings/bench.ts';
import type { Sentences } from './findings/sentences.ts';
import { standSentences } from './findings/stand.ts';
import type { Writer } from './writer.ts';

/** Every kind of finding that the engine knows, by its code. */
export const allSentences: Sentences<Record<string, never>> = {
  ...benchSentences,
  ...standSentences,
} as Sentences<Record<string, never>>;

/** A finding as a sentence in the reader's units. */
export function sentenceOf({ code, values }: Finding, writer: Writer): string {
  if (code === 'said') {
    const words = String(values.words);
    return writer.units === 'si' ? words : lengthsInWords(words, writer.units);
  }
  const say = allSentences[code];
  if (!say) throw new Error(`no sentence is written for the finding "${code}"`);
  return say(values as never, writer);
}
