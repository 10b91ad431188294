import {
  beginText,
  type Color,
  degreesToRadians,
  endText,
  type PDFFont,
  PDFHexString,
  type PDFPage,
  popGraphicsState,
  pushGraphicsState,
  rotateAndSkewTextRadiansAndTranslate,
  setFillingColor,
  setFontAndSize,
  showText,
} from '@cantoo/pdf-lib';
import type { Text, TextPiece } from '../sheets/drawing.ts';
import { fractionSetting } from '../sheets/text-width.ts';
import { lettersInOrder } from './letter-order.ts';
import type { TypeCase } from './type-case.ts';

interface Setting {
  type: TypeCase;
  color: Color;
  pointsPerMm: number;
  /** A place of the drawing on the paper. */
  placePt(xMm: number, yMm: number): { x: number; y: number };
}

/** Pieces one after the other along the base line, which runs right or, for `upwards`, up the page. */
export function setText(page: PDFPage, mark: Text, { type, color, pointsPerMm, placePt }: Setting): void {
  const runs = mark.pieces.flatMap((piece) => pieceRuns(piece, mark.sizeMm, type));
  const widthMm = runs.reduce((sum, run) => sum + run.advanceMm, 0);
  let alongMm = -{ start: 0, middle: widthMm / 2, end: widthMm }[mark.align];
  for (const run of runs) {
    const [xMm, yMm] = mark.upwards
      ? [mark.xMm - run.riseMm, mark.yMm - alongMm]
      : [mark.xMm + alongMm, mark.yMm - run.riseMm];
    const { x, y } = placePt(xMm, yMm);
    const key = fontKey(page, run.font);
    page.pushOperators(
      pushGraphicsState(),
      beginText(),
      setFillingColor(color),
      setFontAndSize(key, run.sizeMm * pointsPerMm),
      rotateAndSkewTextRadiansAndTranslate(degreesToRadians(mark.upwards ? 90 : 0), 0, 0, x, y),
      showText(run.code),
      endText(),
      popGraphicsState(),
    );
    alongMm += run.advanceMm;
  }
}

const keys = new WeakMap<PDFPage, Map<PDFFont, ReturnType<PDFPage['node']['newFontDictionary']>>>();

/** The name under which the page's own list has the font. */
function fontKey(page: PDFPage, font: PDFFont) {
  const known = keys.get(page) ?? new Map();
  keys.set(page, known);
  const key = known.get(font) ?? page.node.newFontDictionary('Font', font.ref);
  known.set(font, key);
  return key;
}

/** Letters of one font and size. */
interface Run {
  font: PDFFont;
  code: PDFHexString;
  sizeMm: number;
  riseMm: number;
  advanceMm: number;
}

/** A fraction is a small raised numerator, a stroke and a small denominator on the base line. */
function pieceRuns(piece: TextPiece, sizeMm: number, type: TypeCase): Run[] {
  if (typeof piece === 'string') return runsOf(piece, sizeMm, 0, type);
  const { size, raise } = fractionSetting;
  return [
    ...runsOf(`${piece.numerator}`, sizeMm * size, sizeMm * raise, type),
    ...runsOf('/', sizeMm, 0, type),
    ...runsOf(`${piece.denominator}`, sizeMm * size, 0, type),
  ];
}

/**
 * Letter by letter, in the order of the paper: the font's own layout would join and turn letters, and would count
 * kerning, which is not drawn.
 */
function runsOf(words: string, sizeMm: number, riseMm: number, type: TypeCase): Run[] {
  const runs: { font: PDFFont; letters: string[] }[] = [];
  for (const letter of lettersInOrder(words)) {
    const font = type.fontOf(letter);
    const last = runs.at(-1);
    if (last?.font === font) last.letters.push(letter);
    else runs.push({ font, letters: [letter] });
  }
  return runs.map(({ font, letters }) => ({
    font,
    code: PDFHexString.of(letters.map((letter) => font.encodeText(letter).asString()).join('')),
    sizeMm,
    riseMm,
    advanceMm: letters.reduce((sum, letter) => sum + font.widthOfTextAtSize(letter, sizeMm), 0),
  }));
}
