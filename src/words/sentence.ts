import type { Finding } from '../engine/finding.ts';
import { lengthsInWords } from '../engine/units/lengths-in-words.ts';
import { benchSentences } from './findings/bench.ts';
import { finishSentences } from './findings/finish.ts';
import { frequencySentences } from './findings/frequency.ts';
import { guideSentences } from './findings/guides.ts';
import { handleSentences } from './findings/handle.ts';
import { inputSentences } from './findings/input.ts';
import { layoutSentences } from './findings/layout.ts';
import { joinSentences } from './findings/load-test.ts';
import { marksSentences } from './findings/marks.ts';
import { printerSentences } from './findings/printer.ts';
import { assumedSentences, recordSentences } from './findings/record.ts';
import { rotationSentences } from './findings/rotation.ts';
import type { Sentences } from './findings/sentences.ts';
import { quantitySentences } from './findings/units.ts';
import { wrapSentences } from './findings/wraps.ts';
import type { Writer } from './writer.ts';

/** Every kind of finding that the engine knows, by its code. */
export const allSentences: Sentences<Record<string, never>> = {
  ...benchSentences,
  ...finishSentences,
  ...frequencySentences,
  ...guideSentences,
  ...handleSentences,
  ...inputSentences,
  ...layoutSentences,
  ...joinSentences,
  ...marksSentences,
  ...printerSentences,
  ...assumedSentences,
  ...recordSentences,
  ...rotationSentences,
  ...quantitySentences,
  ...wrapSentences,
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
