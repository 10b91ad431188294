import bidiFactory from 'bidi-js';

// Its types take it for a module with a default export; Node and bundlers alike give the function itself.
const bidi = (bidiFactory as unknown as () => Bidi)();
interface Bidi {
  getEmbeddingLevels(words: string, base: 'ltr'): unknown;
  getReorderedString(words: string, levels: unknown): string;
}

/** Letters that are written from right to left, and marks that turn the direction. */
const turning = /[\u0590-\u08ff\u200f\u202b\u202e\u2067\ufb1d-\ufdff\ufe70-\ufeff]/;

/** Signs that only tell the direction, and those that nobody sees. */
const unseen = /[\u200b-\u200f\u202a-\u202e\u2060-\u2069\ufeff\p{Cc}]/u;

/**
 * The letters from left to right as they stand on the paper (Unicode's bidirectional algorithm, UAX 9). The papers
 * are English: names from right to left stand in lines from left to right.
 */
export function lettersInOrder(words: string): string[] {
  const whole = words.normalize('NFC');
  const ordered = turning.test(whole)
    ? bidi.getReorderedString(whole, bidi.getEmbeddingLevels(whole, 'ltr'))
    : whole;
  return [...ordered].filter((letter) => !unseen.test(letter));
}
