/**
 * What the PDF says is read back without our writer: always by the small content-stream reader below (pdf-lib
 * only opens the file), and by poppler's renderer and text extractor where they are installed.
 */
import { execFileSync } from 'node:child_process';
import { mkdtempSync, readFileSync, rmSync, writeFileSync } from 'node:fs';
import { tmpdir } from 'node:os';
import { join } from 'node:path';
import { inflateSync } from 'node:zlib';
import { PDFArray, PDFDocument, PDFName, PDFRawStream, PDFRef } from '@cantoo/pdf-lib';
import { afterAll, beforeAll, describe, expect, it } from 'vitest';
import { paperFonts } from '../cli/paper-fonts.ts';
import { assembleBlank } from '../engine/bench/assemble.ts';
import { keepOutZones } from '../engine/bench/ferrule-zones.ts';
import { arithmeticRule } from '../engine/bench/start-list.ts';
import { fourPiece } from '../engine/bench/test-bench.ts';
import { listMarks } from '../engine/marks/marks-list.ts';
import { type Line, type Sheet, type Text, text } from '../sheets/drawing.ts';
import { stripsSheet } from '../sheets/strips-sheet.ts';
import { textWidthMm } from '../sheets/text-width.ts';
import { lettersInOrder } from './letter-order.ts';
import { missingWords } from './missing-letters.ts';
import { sheetsPdf } from './sheet-pdf.ts';
import { typeCasesFor } from './type-case.ts';

const mmPerPoint = 25.4 / 72;
const printedAt = new Date('2026-01-02T03:04:05Z');
const fonts = paperFonts();
const bytesOf = async (sheets: readonly Sheet[], title = 't') =>
  (await sheetsPdf(sheets, { title, printedAt, fonts })).bytes;

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

/** Two pages of three with a letter that no font has. */
const strange: Sheet = {
  title: '',
  pages: ['ブ Ødegård 12 3⁄16″', 'Ødegård 🎣', 'Ødegård'].map((words) => ({
    widthMm: 100,
    heightMm: 50,
    marks: [text(10, 20, words)],
  })),
};

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
      const strokes = await readStrokes(await bytesOf([sheet]));
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
    const strokes = await readStrokes(await bytesOf([sheet]));
    const [tick] = guideTicks(sheet)[0];
    const off = strokes[0].map((stroke) =>
      Math.hypot(stroke.x1Mm - tick.x1Mm - 0.2, stroke.y1Mm - tick.y1Mm, stroke.y2Mm - tick.y2Mm),
    );
    expect(Math.min(...off)).toBeGreaterThan(0.1);
  });

  it('pages have the paper’s size and viewers are told not to scale', async () => {
    const bytes = await bytesOf([strips('letter')]);
    const document = await PDFDocument.load(bytes);
    const { width, height } = document.getPage(0).getSize();
    expect(width).toBeCloseTo(11 * 72, 6);
    expect(height).toBeCloseTo(8.5 * 72, 6);
    expect(document.catalog.getViewerPreferences()?.getPrintScaling()).toBe('None');
  });

  it('the same drawing and date give the same bytes', async () => {
    const make = () => bytesOf([strips('a4')]);
    expect(Buffer.from(await make()).equals(Buffer.from(await make()))).toBe(true);
  });

  it('a letter that no font has does not stop the print; it is named', async () => {
    const printed = await sheetsPdf([strange], { title: 'ブ', printedAt, fonts });
    expect(printed.missing).toEqual(['ブ', '🎣']);
    expect(missingWords(printed.missing)).toMatch(/no font for ブ 🎣\. Empty boxes/);
  });
});

describe('any alphabet', () => {
  const drawn = (words: string, bold = false): Sheet => ({
    title: '',
    pages: [{ widthMm: 150, heightMm: 30, marks: [text(10, 20, words, { bold })] }],
  });
  const alphabets = [
    'Ødegård Łukasiewicz Čeněk Şükrü Đặng',
    'Иванов Щукін Ђорђевић Жуков',
    'Παπαδόπουλος Ὀδυσσεύς',
    'ישראל',
  ];

  it.each(alphabets)('%s is printed whole, each letter once in the file', async (words) => {
    const printed = await sheetsPdf([drawn(words)], { title: 't', printedAt, fonts });
    expect(printed.missing).toEqual([]);
    expect(printed.bytes.length).toBeLessThan(40_000);
  });

  it('Hebrew runs from right to left, its numbers and Latin names from left to right', () => {
    expect(lettersInOrder('דג 12 רחוב cm').join('')).toBe('בוחר 12 גד cm');
    expect(lettersInOrder('blank דג').join('')).toBe('blank גד');
    expect(lettersInOrder('plain words').join('')).toBe('plain words');
  });
});

describe('label widths', () => {
  /** As drawn, letter by letter. */
  async function drawnWidthMm(words: string, sizeMm: number, bold: boolean): Promise<number> {
    const document = await PDFDocument.create();
    const mark = text(0, 0, [words], { bold });
    const { [bold ? 'bold' : 'plain']: type } = await typeCasesFor(document, [mark], fonts);
    return [...words].reduce((sum, char) => sum + type.fontOf(char).widthOfTextAtSize(char, sizeMm), 0);
  }

  it('the estimate that keeps labels apart is never less than the font’s own width', async () => {
    const words = strips('a4').pages.flatMap(({ marks }) =>
      marks.filter(
        (mark): mark is Text =>
          mark.kind === 'text' && mark.pieces.every((piece) => typeof piece === 'string'),
      ),
    );
    expect(words.length).toBeGreaterThan(50);
    for (const mark of words) {
      const joined = mark.pieces.join('');
      const real = await drawnWidthMm(joined, mark.sizeMm, mark.bold === true);
      const estimate = textWidthMm(mark.pieces, mark.sizeMm, mark.bold);
      expect(estimate, joined).toBeGreaterThanOrEqual(real - 1e-9);
      expect(estimate, joined).toBeLessThan(1.4 * real + 0.5);
    }
  });

  it('nor less than any letter of the alphabets that are written today', async () => {
    const ranges = [
      [0xc0, 0x17f],
      [0x386, 0x3ce],
      [0x401, 0x45f],
      [0x5d0, 0x5ea],
    ];
    const letters = ranges
      .flatMap(([from, to]) =>
        Array.from({ length: to - from + 1 }, (_, k) => String.fromCodePoint(from + k)),
      )
      .filter((letter) => /\p{L}/u.test(letter));
    const document = await PDFDocument.create();
    for (const bold of [false, true]) {
      const cases = await typeCasesFor(document, [text(0, 0, letters.join(''), { bold })], fonts);
      for (const letter of letters) {
        const real = cases[bold ? 'bold' : 'plain'].fontOf(letter).widthOfTextAtSize(letter, 1);
        expect(textWidthMm([letter], 1, bold), letter).toBeGreaterThanOrEqual(real - 0.035);
      }
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
  beforeAll(async () => writeFileSync(file, await bytesOf([sheet])));
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

  it('an empty box is explained on the pages that have one, and there alone', async () => {
    const boxes = join(folder, 'boxes.pdf');
    writeFileSync(boxes, await bytesOf([strange]));
    const pages = execFileSync('pdftotext', ['-layout', boxes, '-'], { encoding: 'utf8' }).split('\f');
    expect(pages.slice(0, 3).map((page) => /empty box stands for a letter/.test(page))).toEqual([
      true,
      true,
      false,
    ]);
    for (const page of pages.slice(0, 3)) expect(page).toContain('Ødegård');
  });

  it('every alphabet is read back as it was written', async () => {
    const [written, file] = ['Đặng Щукін Ὀδυσσεύς', join(folder, 'alphabets.pdf')];
    const page = {
      widthMm: 150,
      heightMm: 30,
      marks: [text(10, 20, written), text(10, 28, 'שלום', { bold: true })],
    };
    writeFileSync(file, await bytesOf([{ title: '', pages: [page] }]));
    const words = execFileSync('pdftotext', ['-layout', file, '-'], { encoding: 'utf8' });
    expect(words.normalize('NFC')).toContain(written);
    expect(words).toMatch(/שלום|םולש/);
    expect(execFileSync('pdffonts', [file], { encoding: 'utf8' })).not.toMatch(/ no +(yes|no) +(yes|no) +\d/);
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
