import { type Mark, type Text, text, textPieces } from './drawing.ts';
import { textWidthMm } from './text-width.ts';

export interface ParagraphOptions {
  widthMm: number;
  sizeMm?: number;
  /** More lines are cut off, the last one ends in dots. */
  most?: number;
  style?: Partial<Text>;
}

/** Words set in lines of a width, the first base line at `topMm`. */
export function paragraph(
  words: string,
  leftMm: number,
  topMm: number,
  { widthMm, sizeMm = 3, most = Number.POSITIVE_INFINITY, style = {} }: ParagraphOptions,
): { marks: Mark[]; heightMm: number } {
  const all = linesOf(words, widthMm, sizeMm, style.bold);
  const lines = all.length > most ? [...all.slice(0, most - 1), `${all[most - 1]} ...`] : all;
  const stepMm = sizeMm * 1.4;
  return {
    marks: lines.map((one, i) => text(leftMm, topMm + i * stepMm, one, { sizeMm, ...style })),
    heightMm: lines.length * stepMm,
  };
}

/** Broken at spaces and at the line breaks there are; a word longer than the line is broken where it is full. */
export function linesOf(words: string, widthMm: number, sizeMm: number, bold = false): string[] {
  const fits = (some: string) => textWidthMm(textPieces(some), sizeMm, bold) <= widthMm;
  return words.split(/\r?\n/).flatMap((part) => (part.trim() === '' ? [] : breakLine(part.trim(), fits)));
}

function breakLine(part: string, fits: (some: string) => boolean): string[] {
  const lines: string[] = [];
  let now = '';
  for (const word of part.split(/\s+/)) {
    const longer = now === '' ? word : `${now} ${word}`;
    if (fits(longer)) {
      now = longer;
      continue;
    }
    if (now !== '') lines.push(now);
    now = word;
    while (!fits(now)) {
      let end = now.length - 1;
      while (end > 1 && !fits(now.slice(0, end))) end--;
      lines.push(now.slice(0, end));
      now = now.slice(end);
    }
  }
  return now === '' ? lines : [...lines, now];
}
