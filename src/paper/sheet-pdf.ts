/**
 * Drawings to PDF at true size: 1 mm of drawing is 72/25.4 pt of paper, and viewers are told not to scale.
 *
 * The letters that are used are embedded, so that every viewer and printer sets the same ones. A letter no font has
 * is an empty box, said on its page and to who prints. Fractions are set from their parts, not from a glyph.
 */
import {
  type Color,
  closePath,
  fill,
  lineTo,
  moveTo,
  PDFDocument,
  type PDFPage,
  PrintScaling,
  rgb,
  setFillingColor,
} from '@cantoo/pdf-lib';
import type { Area, Ink, Line, Mark, Page, Shape, Sheet, Text } from '../sheets/drawing.ts';
import { text } from '../sheets/drawing.ts';
import type { FontFiles } from './font-files.ts';
import { lettersInOrder } from './letter-order.ts';
import { setText } from './set-text.ts';
import { type TypeCases, typeCasesFor } from './type-case.ts';

export interface PdfOptions {
  title: string;
  /** Stamped into the file; the same date gives the same bytes. */
  printedAt: Date;
  fonts: FontFiles;
}
export interface Printed {
  bytes: Uint8Array;
  /** Letters no font has: they stand as empty boxes. */
  missing: string[];
}

export const pointsPerMm = 72 / 25.4;

/** All pages of the sheets, in order, as one PDF. */
export async function sheetsPdf(sheets: readonly Sheet[], options: PdfOptions): Promise<Printed> {
  const document = await PDFDocument.create({ updateMetadata: false });
  document.setTitle(options.title);
  document.setProducer('Fairbend');
  document.setCreationDate(options.printedAt);
  document.setModificationDate(options.printedAt);
  document.catalog.getOrCreateViewerPreferences().setPrintScaling(PrintScaling.None);
  const pages = sheets.flatMap((sheet) => sheet.pages);
  const texts = [...pages.flatMap(({ marks }) => marks.filter(isText)), boxNote];
  const cases = await typeCasesFor(document, texts, options.fonts);
  for (const page of pages) drawPage(document, page, cases);
  return { bytes: await document.save({ useObjectStreams: false }), missing: cases.missing };
}

const isText = (mark: Mark): mark is Text => mark.kind === 'text';
const boxNote = text(12, 7, 'An empty box stands for a letter that Fairbend has no font for.', {
  sizeMm: 2.2,
  ink: 'attention',
});

interface Canvas {
  page: PDFPage;
  cases: TypeCases;
  heightMm: number;
}

function drawPage(document: PDFDocument, page: Page, cases: TypeCases): void {
  const size: [number, number] = [page.widthMm * pointsPerMm, page.heightMm * pointsPerMm];
  const canvas: Canvas = { page: document.addPage(size), cases, heightMm: page.heightMm };
  for (const mark of page.marks) drawMark(canvas, mark);
  const missing = new Set(cases.missing);
  const boxed = ({ pieces }: Text) =>
    pieces.some(
      (piece) => typeof piece === 'string' && lettersInOrder(piece).some((one) => missing.has(one)),
    );
  if (page.marks.filter(isText).some(boxed)) drawText(canvas, boxNote);
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

function drawText(canvas: Canvas, mark: Text): void {
  const type = mark.bold ? canvas.cases.bold : canvas.cases.plain;
  const placePt = (xMm: number, yMm: number) => place(canvas, xMm, yMm);
  setText(canvas.page, mark, { type, color: inks[mark.ink], pointsPerMm, placePt });
}
