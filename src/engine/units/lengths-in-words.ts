import { formatLength } from './format-quantity.ts';
import type { UnitSystem } from './unit-table.ts';

/** Below a tick of the tape a length stays in millimetres [m]. */
const leastM = 0.0254 / 16;

/**
 * The engine's findings tell lengths in millimetres; in an inch shop each is written as his tape reads, to a
 * sixteenth. Display only.
 */
export function lengthsInWords(words: string, system: UnitSystem): string {
  if (system === 'mm') return words;
  return words.replace(/(\d+(?:\.\d+)?) mm\b/g, (written, millimetres: string) => {
    const lengthM = Number(millimetres) / 1000;
    return lengthM < leastM ? written : formatLength(lengthM, { system });
  });
}
