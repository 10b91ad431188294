import fontkit from '@cantoo/fontkit';
import type { PDFDocument, PDFFont } from '@cantoo/pdf-lib';
import type { Text } from '../sheets/drawing.ts';
import { type FontFiles, type FontSlice, sliceOf } from './font-files.ts';
import { lettersInOrder } from './letter-order.ts';

/** One weight of the type, with every letter that a print asks for. */
export interface TypeCase {
  /** The font that has the letter; where none has, one that sets an empty box for it. */
  fontOf(letter: string): PDFFont;
  has(letter: string): boolean;
}
export interface TypeCases {
  plain: TypeCase;
  bold: TypeCase;
  /** The letters no font has. */
  missing: string[];
}

/** Embeds, of the font's slices, those that the texts need; of each only the letters that are then drawn. */
export async function typeCasesFor(
  document: PDFDocument,
  texts: readonly Text[],
  files: FontFiles,
): Promise<TypeCases> {
  document.registerFontkit(fontkit);
  const [plain, bold] = [
    lettersOf(texts.filter((one) => !one.bold)),
    lettersOf(texts.filter((one) => one.bold)),
  ];
  const cases = {
    plain: await typeCase(document, plain, files, 'plain'),
    bold: await typeCase(document, bold, files, 'bold'),
  };
  const missing = [
    ...[...plain].filter((letter) => !cases.plain.has(letter)),
    ...[...bold].filter((letter) => !cases.bold.has(letter)),
  ];
  return { ...cases, missing: [...new Set(missing)] };
}

function lettersOf(texts: readonly Text[]): Set<string> {
  return new Set(['0', '/', ...texts.flatMap(({ pieces }) => pieces.flatMap(lettersOfPiece))]);
}

function lettersOfPiece(piece: Text['pieces'][number]): string[] {
  return typeof piece === 'string' ? lettersInOrder(piece) : [...`${piece.numerator}${piece.denominator}`];
}

async function typeCase(
  document: PDFDocument,
  letters: ReadonlySet<string>,
  files: FontFiles,
  weight: 'plain' | 'bold',
): Promise<TypeCase> {
  const fonts = new Map<FontSlice, PDFFont>();
  for (const letter of letters) {
    const slice = sliceOf(files, letter);
    if (slice && !fonts.has(slice))
      fonts.set(slice, await document.embedFont(await slice.read(weight), { subset: true }));
  }
  // Digits are always among the letters: their slice is the one a missing letter's box is taken from.
  const first = fonts.get(sliceOf(files, '0')!)!;
  const fontOf = (letter: string) => fonts.get(sliceOf(files, letter) as FontSlice) ?? first;
  const known = new Map([...fonts.values()].map((font) => [font, new Set(font.getCharacterSet())]));
  return { fontOf, has: (letter) => known.get(fontOf(letter))!.has(letter.codePointAt(0)!) };
}
