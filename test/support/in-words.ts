import type { Finding } from '../../src/engine/finding.ts';
import { sentenceOf } from '../../src/words/sentence.ts';
import { shopWriter } from '../../src/words/writer.ts';

const writer = shopWriter({ system: 'mm' });

/** A finding as a millimetre shop reads it; undefined where there is none. */
export function inWords(finding: Finding | undefined): string {
  return finding ? sentenceOf(finding, writer) : 'no finding';
}
