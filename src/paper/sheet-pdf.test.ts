/**
 * What the PDF says is read back without our writer: always by the small content-stream reader below (pdf-lib
 * only opens the file), and by poppler's renderer and text extractor where they are installed.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { PDFArray, PDFDocument, PDFName, PDFRawStream, PDFRef, StandardFonts } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { keepOutZones } from '../engine/bench/ferrule-zones.ts';
import { arithmeticRule } from '../engine/bench/start-list.ts';
import { fourPiece } from '../engine/bench/test-bench.ts';
import { listMarks } from '../engine/marks/marks-list.ts';
import { type Line, type Sheet, type Text, text } from '../sheets/drawing.ts';
import { stripsSheet } from '../sheets/strips-sheet.ts';
import { textWidthMm } from '../sheets/text-width.ts';
import { sheetsPdf } from './sheet-pdf.ts';

const mmPerPoint = 25.4 / 72;
const printedAt = new Date('2026-01-02T03:04:05Z');

function strips(paper: 'a4' | 'letter', factors = { across: 1, along: 1 }): Sheet {
  const blank = assembleBlank(fourPiece().sections);
  const rule = arithmeticRule({ count: 10, firstFromTipM: 0.1143, strippingFromTipM: 1.9812 });
  const guides = (rule.ok ? rule.fromTipM : []).map((fromTipM) => ({ name: 'snake', fromTipM }));
  const list = listMarks(blank, guides, '1/16 in');
  return stripsSheet(blank, list, keepOutZones(blank), { paper, stamp: 'invented build', factors });
}
const guideTicks = (sheet: Sheet) =>
  sheet.pages.map((page) =>
    page.marks.filter((mark): mark is Line => mark.kind === 'line' && /^guide /.test(mark.name ?? '')),
  );

interface Stroke {
  x1Mm: number;
  y1Mm: number;
  x2Mm: number;
  y2Mm: number;
}

/** Straight strokes of each page, from the top left in mm, by following cm, q, Q, m and l in the content stream. */
async function readStrokes(bytes: Uint8Array): Promise<Stroke[][]> {
  const document = await PDFDocument.load(bytes);
  return document.getPages().map((page) => {
    const heightMm = page.getHeight() * mmPerPoint;
    return followOperators(contentOf(document, page.node.get(PDFName.of('Contents')))).map((stroke) => ({
      x1Mm: stroke.x1 * mmPerPoint,
      y1Mm: heightMm - stroke.y1 * mmPerPoint,
      x2Mm: stroke.x2 * mmPerPoint,
      y2Mm: heightMm - stroke.y2 * mmPerPoint,
    }));
  });
}

function contentOf(document: PDFDocument, contents: unknown): string {
  const found = contents instanceof PDFRef ? document.context.lookup(contents) : contents;
  if (found instanceof PDFArray)
    return found
      .asArray()
      .map((one) => contentOf(document, one))
      .join('\n');
  if (!(found instanceof PDFRawStream)) throw new Error('no content stream');
  const packed = found.dict.get(PDFName.of('Filter')) !== undefined;
  return Buffer.from(packed ? inflateSync(found.contents) : found.contents).toString('latin1');
}

type Matrix = [number, number, number, number, number, number];

function followOperators(stream: string) {
  const strokes: { x1: number; y1: number; x2: number; y2: number }[] = [];
  const saved: Matrix[] = [];
  let matrix: Matrix = [1, 0, 0, 1, 0, 0];
  let from = { x: 0, y: 0 };
  let operands: number[] = [];
  const place = ([x, y]: number[]) => ({
    x: matrix[0] * x + matrix[2] * y + matrix[4],
    y: matrix[1] * x + matrix[3] * y + matrix[5],
  });
  for (const token of stream.split(/\s+/)) {
    if (/^[-+.\d]+$/.test(token)) {
      operands.push(Number(token));
      continue;
    }
    if (token === 'q') saved.push(matrix);
    if (token === 'Q') matrix = saved.pop() ?? matrix;
    if (token === 'cm') matrix = multiply(operands.slice(-6) as Matrix, matrix);
    if (token === 'm') from = place(operands.slice(-2));
    if (token === 'l') {
      const to = place(operands.slice(-2));
      strokes.push({ x1: from.x, y1: from.y, x2: to.x, y2: to.y });
      from = to;
    }
    operands = [];
  }
  return strokes;
}

function multiply(a: Matrix, b: Matrix): Matrix {
  return [
    a[0] * b[0] + a[1] * b[2],
    a[0] * b[1] + a[1] * b[3],
    a[2] * b[0] + a[3] * b[2],
    a[2] * b[1] + a[3] * b[3],
    a[4] * b[0] + a[5] * b[2] + b[4],
    a[4] * b[1] + a[5] * b[3] + b[5],
  ];
}

describe('true size', () => {
  it.each([
    ['a4', { across: 1, along: 1 }],
    ['letter', { across: 1, along: 1 }],
    ['a4', { across: 1.004, along: 0.997 }],
  ] as const)(
    '%s %o: every guide tick read back from the PDF stands within 0.1 mm',
    async (paper, factors) => {
      const sheet = strips(paper, factors);
      const strokes = await readStrokes(await sheetsPdf([sheet], { title: 't', printedAt }));
      const expected = guideTicks(sheet);
      expect(expected.flat().length).toBeGreaterThanOrEqual(10);
      expected.forEach((ticks, page) => {
        for (const tick of ticks) {
          const off = strokes[page].map((stroke) =>
            Math.hypot(
              stroke.x1Mm - tick.x1Mm,
              stroke.y1Mm - tick.y1Mm,
              stroke.x2Mm - tick.x2Mm,
              stroke.y2Mm - tick.y2Mm,
            ),
          );
          expect(Math.min(...off), tick.name).toBeLessThan(0.1);
        }
      });
    },
  );

  it('the reader itself sees a tick that is 0.2 mm off', async () => {
    const sheet = strips('a4');
    const strokes = await readStrokes(await sheetsPdf([sheet], { title: 't', printedAt }));
    const [tick] = guideTicks(sheet)[0];
    const off = strokes[0].map((stroke) =>
      Math.hypot(stroke.x1Mm - tick.x1Mm - 0.2, stroke.y1Mm - tick.y1Mm, stroke.y2Mm - tick.y2Mm),
    );
    expect(Math.min(...off)).toBeGreaterThan(0.1);
  });

  it('pages have the paper’s size and viewers are told not to scale', async () => {
    const bytes = await sheetsPdf([strips('letter')], { title: 't', printedAt });
    const document = await PDFDocument.load(bytes);
    const { width, height } = document.getPage(0).getSize();
    expect(width).toBeCloseTo(11 * 72, 6);
    expect(height).toBeCloseTo(8.5 * 72, 6);
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None');
  });

  it('the same drawing and date give the same bytes', async () => {
    const make = () => sheetsPdf([strips('a4')], { title: 't', printedAt });
    expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
  });

  it('letters that the fonts lack do not stop the print', async () => {
    const marks = [text(10, 20, 'ブランク Ødegård 12 3⁄16″ 🎣')];
    const bytes = await sheetsPdf([{ title: '', pages: [{ widthMm: 100, heightMm: 50, marks }] }], {
      title: 'ブ',
      printedAt,
    });
    expect(bytes.length).toBeGreaterThan(500);
  });
});

describe('label widths', () => {
  it('the estimate that keeps labels apart is never less than the font’s own width', async () => {
    const document = await PDFDocument.create();
    const plain = await document.embedFont(StandardFonts.Helvetica);
    const bold = await document.embedFont(StandardFonts.HelveticaBold);
    const words = strips('a4').pages.flatMap(({ marks }) =>
      marks.filter(
        (mark): mark is Text =>
          mark.kind === 'text' && mark.pieces.every((piece) => typeof piece === 'string'),
      ),
    );
    expect(words.length).toBeGreaterThan(50);
    for (const mark of words) {
      const joined = mark.pieces.join('');
      const font = mark.bold ? bold : plain;
      const real = [...joined].reduce((sum, char) => sum + font.widthOfTextAtSize(char, mark.sizeMm), 0);
      const estimate = textWidthMm(mark.pieces, mark.sizeMm, mark.bold);
      expect(estimate, joined).toBeGreaterThanOrEqual(real - 1e-9);
      expect(estimate, joined).toBeLessThan(1.4 * real + 0.5);
    }
  });
});

const poppler = (() => {
  try {
    execFileSync('pdftoppm', ['-v'], { stdio: 'ignore' });
    return true;
  } catch {
    return false;
  }
})();

describe.skipIf(!poppler)('as poppler sees it (skipped where poppler-utils is not installed)', () => {
  const folder = mkdtempSync(join(tmpdir(), 'paper-'));
  const file = join(folder, 'strips.pdf');
  const sheet = strips('a4');
  beforeAll(async () => writeFileSync(file, await sheetsPdf([sheet], { title: 't', printedAt })));
  afterAll(() => rmSync(folder, { recursive: true }));

  it('rendered at 600 dpi, every tick’s ink is centred within 0.1 mm', () => {
    const [ticks] = guideTicks(sheet);
    execFileSync('pdftoppm', [
      '-r',
      '600',
      '-gray',
      '-f',
      '1',
      '-l',
      '1',
      '-singlefile',
      file,
      join(folder, 'page'),
    ]);
    const image = readGray(join(folder, 'page.pgm'));
    const perMm = 600 / 25.4;
    for (const tick of ticks) {
      // Half way up the strip's body, where nothing else is drawn beside the tick.
      const row = Math.round((tick.y1Mm - 6.5) * perMm);
      const from = Math.round((tick.x1Mm - 0.5) * perMm);
      const dark = Array.from({ length: Math.round(perMm) }, (_, k) => ({
        x: from + k,
        ink: 255 - image.at(from + k, row),
      }));
      const ink = dark.reduce((sum, pixel) => sum + pixel.ink, 0);
      const centre = dark.reduce((sum, pixel) => sum + pixel.ink * (pixel.x + 0.5), 0) / ink / perMm;
      expect(Math.abs(centre - tick.x1Mm), tick.name).toBeLessThan(0.1);
    }
  });

  it('fractions read as a person would read them out', () => {
    const words = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    expect(words).toMatch(/1: 4 1\/2 in \/ 23 5\/8 in|1: 4 1\/2 in \/ 23 /);
  });
});

function readGray(path: string) {
  const bytes = readFileSync(path);
  const [header, width] = /^P5\s+(\d+)\s+(\d+)\s+255\s/.exec(bytes.subarray(0, 40).toString('latin1')) ?? [];
  if (!header) throw new Error('not a grey bitmap');
  return { at: (x: number, y: number) => bytes[header.length + y * Number(width) + x] };
}
