import type { TextPiece } from './drawing.ts';

/** How a fraction is set, as shares of the text's size. */
export const fractionSetting = { size: 0.62, raise: 0.32, drop: -0.02, strokeGap: 0.02 } as const;

/**
 * Room a text takes, for keeping labels apart. Widths are those of the papers' font by kind of character, in
 * em, never less than the true ones; the paper's tests hold them against the font itself.
 */
export function textWidthMm(pieces: readonly TextPiece[], sizeMm: number, bold = false): number {
  const em = pieces.reduce((sum, piece) => sum + pieceWidth(piece), 0);
  return em * sizeMm * (bold ? 1.07 : 1);
}

function pieceWidth(piece: TextPiece): number {
  if (typeof piece === 'string') return [...piece].reduce((sum, char) => sum + charWidth(char), 0);
  const digits = `${piece.numerator}${piece.denominator}`.length;
  return digits * 0.556 * fractionSetting.size + 0.28 + 2 * fractionSetting.strokeGap;
}

function charWidth(char: string): number {
  if (char > '\u007f') return widthBeyondAscii(char);
  if (/[ijl.,:;'|!]/.test(char)) return 0.278;
  if (/[ ftI/\\()[\]-]/.test(char)) return 0.334;
  if (/[mwMW%@]/.test(char)) return 1.02;
  if (/[A-Z&+=<>]/.test(char)) return 0.78;
  return 0.557;
}

/** Accented letters are as wide as plain ones; of other alphabets by kind, never less than theirs. */
function widthBeyondAscii(char: string): number {
  const [plain, ...accents] = char.normalize('NFD');
  if (accents.length > 0 && plain < '\u007f')
    return Math.max(charWidth(plain), 0.46) + (/[ơưďľť]/i.test(char) ? 0.12 : 0);
  if (/[·′″‘’“”–]/.test(char)) return 0.557;
  if (/[ЂЖЉЊЋШЩЫЮÆŒĲ№…™—\u2e80-\u9fff\uac00-\ud7ff\uff00-\uff60\u{20000}-\u{3ffff}]/u.test(plain))
    return 1.08;
  if (/[жмфшщъыюљњćæœĸŉ½¼¾ωψφπאטםמסףעשת]/.test(plain)) return 0.92;
  return /\p{Lu}/u.test(plain) ? 0.88 : 0.68;
}

/** What a builder wrote may be longer than the paper is wide. */
export function shortWords(words: string, most: number): string {
  return words.length <= most ? words : `${words.slice(0, most - 2)} …`;
}
