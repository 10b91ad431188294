/**
 * Drawings to PDF at true size: 1 mm of drawing is 72/25.4 pt of paper, and viewers are told not to scale.
 *
 * Letters are the reader's own Helvetica (one of the 14 standard PDF fonts, nothing embedded), which knows
 * Western European letters; others are printed as `?`. Fractions are set from their parts, not from a glyph.
 */
import {
  type Color,
  closePath,
  degrees,
  fill,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFFont,
  type PDFPage,
  PrintScaling,
  rgb,
  StandardFonts,
  setFillingColor,
} from '@cantoo/pdf-lib';
import type { Area, Ink, Line, Mark, Page, Shape, Sheet, Text, TextPiece } from '../sheets/drawing.ts';
import { fractionSetting } from '../sheets/text-width.ts';

export interface PdfOptions {
  title: string;
  /** Stamped into the file; the same date gives the same bytes. */
  printedAt: Date;
}

export const pointsPerMm = 72 / 25.4;

/** All pages of the sheets, in order, as the bytes of one PDF. */
export async function sheetsPdf(sheets: readonly Sheet[], options: PdfOptions): Promise<Uint8Array> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(options.title);
  document.setProducer('Fairbend');
  document.setCreationDate(options.printedAt);
  document.setModificationDate(options.printedAt);
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const fonts = {
    plain: await document.embedFont(StandardFonts.Helvetica),
    bold: await document.embedFont(StandardFonts.HelveticaBold),
  };
  for (const page of sheets.flatMap(({ pages }) => pages)) drawPage(document, page, fonts);
  return document.save({ useObjectStreams: false });
}

interface Fonts {
  plain: PDFFont;
  bold: PDFFont;
}
interface Canvas {
  page: PDFPage;
  fonts: Fonts;
  heightMm: number;
}

function drawPage(document: PDFDocument, page: Page, fonts: Fonts): void {
  const size: [number, number] = [page.widthMm * pointsPerMm, page.heightMm * pointsPerMm];
  const canvas: Canvas = { page: document.addPage(size), fonts, heightMm: page.heightMm };
  for (const mark of page.marks) drawMark(canvas, mark);
}

function drawMark(canvas: Canvas, mark: Mark): void {
  if (mark.kind === 'line') drawLine(canvas, mark);
  else if (mark.kind === 'area') drawArea(canvas, mark);
  else if (mark.kind === 'shape') drawShape(canvas, mark);
  else drawText(canvas, mark);
}

const inks: Record<Ink, Color> = {
  black: rgb(0, 0, 0),
  grey: rgb(0.42, 0.42, 0.42),
  attention: rgb(0.78, 0.2, 0.12),
};

/** Paper's y points up, the drawing's down. */
function place({ heightMm }: Canvas, xMm: number, yMm: number): { x: number; y: number } {
  return { x: xMm * pointsPerMm, y: (heightMm - yMm) * pointsPerMm };
}

function drawLine(canvas: Canvas, mark: Line): void {
  canvas.page.drawLine({
    start: place(canvas, mark.x1Mm, mark.y1Mm),
    end: place(canvas, mark.x2Mm, mark.y2Mm),
    thickness: mark.widthMm * pointsPerMm,
    color: inks[mark.ink],
    dashArray: mark.dashMm?.map((length) => length * pointsPerMm),
  });
}

function drawArea(canvas: Canvas, mark: Area): void {
  canvas.page.drawRectangle({
    ...place(canvas, mark.xMm, mark.yMm + mark.heightMm),
    width: mark.widthMm * pointsPerMm,
    height: mark.heightMm * pointsPerMm,
    color: mark.fill ? colourOf(mark.fill) : inks[mark.ink],
    ...(mark.fill ? { borderColor: inks[mark.ink], borderWidth: 0.15 * pointsPerMm } : {}),
  });
}

/** `#rrggbb`; anything else is black. */
function colourOf(hex: string): Color {
  const parts = /^#(..)(..)(..)$/
    .exec(hex)
    ?.slice(1)
    .map((part) => Number.parseInt(part, 16) / 255);
  return parts?.every(Number.isFinite) ? rgb(parts[0], parts[1], parts[2]) : inks.black;
}

/** One path, filled by winding, so that rings running the other way are holes. */
function drawShape(canvas: Canvas, mark: Shape): void {
  const rings = mark.rings.flatMap((ring) =>
    ring.map(({ xMm, yMm }, i) => {
      const { x, y } = place(canvas, xMm, yMm);
      return i === 0 ? [moveTo(x, y)] : [lineTo(x, y), ...(i === ring.length - 1 ? [closePath()] : [])];
    }),
  );
  canvas.page.pushOperators(setFillingColor(inks[mark.ink]), ...rings.flat(), fill());
}

/** Pieces one after the other along the base line, which runs right or, for `upwards`, up the page. */
function drawText(canvas: Canvas, mark: Text): void {
  const font = mark.bold ? canvas.fonts.bold : canvas.fonts.plain;
  const runs = mark.pieces.flatMap((piece) => pieceRuns(piece, mark.sizeMm, font));
  const widthMm = runs.reduce((sum, run) => sum + run.advanceMm, 0);
  let alongMm = -{ start: 0, middle: widthMm / 2, end: widthMm }[mark.align];
  for (const run of runs) {
    const [xMm, yMm] = mark.upwards
      ? [mark.xMm - run.riseMm, mark.yMm - alongMm]
      : [mark.xMm + alongMm, mark.yMm - run.riseMm];
    canvas.page.drawText(run.words, {
      ...place(canvas, xMm, yMm),
      size: run.sizeMm * pointsPerMm,
      font,
      color: inks[mark.ink],
      rotate: degrees(mark.upwards ? 90 : 0),
    });
    alongMm += run.advanceMm;
  }
}

interface Run {
  words: string;
  sizeMm: number;
  riseMm: number;
  advanceMm: number;
}

/** A fraction is a small raised numerator, a stroke and a small denominator on the base line. */
function pieceRuns(piece: TextPiece, sizeMm: number, font: PDFFont): Run[] {
  const run = (words: string, runSizeMm: number, riseMm: number): Run => {
    const known = encodable(words, font);
    return { words: known, sizeMm: runSizeMm, riseMm, advanceMm: widthAsDrawn(known, runSizeMm, font) };
  };
  if (typeof piece === 'string') return [run(piece, sizeMm, 0)];
  const { size, raise } = fractionSetting;
  return [
    run(`${piece.numerator}`, sizeMm * size, sizeMm * raise),
    run('/', sizeMm, 0),
    run(`${piece.denominator}`, sizeMm * size, 0),
  ];
}

/** Letter by letter: the library's own width counts kerning, which it does not draw. */
function widthAsDrawn(words: string, sizeMm: number, font: PDFFont): number {
  return [...words].reduce((sum, char) => sum + font.widthOfTextAtSize(char, sizeMm), 0);
}

/** Typographic marks that the standard fonts lack, in plain ones; letters they lack as `?`. */
function encodable(words: string, font: PDFFont): string {
  const known = new Set(font.getCharacterSet());
  const plain = words.replace(/⁄/g, '/').replace(/″/g, '"').replace(/′/g, "'").replace(/−/g, '-');
  return [...plain].map((char) => (known.has(char.codePointAt(0) ?? 0) ? char : '?')).join('');
}
