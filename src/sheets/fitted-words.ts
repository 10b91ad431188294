import { textPieces } from './drawing.ts';
import { textWidthMm } from './text-width.ts';

/** Cut short where it would run over its room. */
export function fittedWords(words: string, roomMm: number, sizeMm: number, bold = false): string {
  const fits = (some: string) => textWidthMm(textPieces(some), sizeMm, bold) <= roomMm;
  if (fits(words)) return words;
  let cut = words;
  while (cut.length > 1 && !fits(`${cut}...`)) cut = cut.slice(0, -1);
  return `${cut.trimEnd()}...`;
}
